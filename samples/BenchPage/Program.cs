using Microsoft.AspNetCore.Components.WebAssembly.Hosting;

namespace BenchPage;

internal static class Program
{
    // Only the page runs this; the worker starts the same program without it.
    private static async Task Main(string[] arguments)
    {
        var builder = WebAssemblyHostBuilder.CreateDefault(arguments);
        builder.RootComponents.Add<Views.Bench>("#bench");
        await builder.Build().RunAsync();
    }
}

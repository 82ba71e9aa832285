using System.Net;
using System.Net.Http.Json;
using System.Reflection;
using System.Text;
using System.Text.Json;
using AirColumn;
using AirColumn.Documents;
using Microsoft.AspNetCore.Mvc.Testing;

namespace WebService.Tests;

/// <summary>The sample of a web service, asked over HTTP in its own process.</summary>
public sealed class ServiceTests(WebApplicationFactory<Program> factory)
    : IClassFixture<WebApplicationFactory<Program>>
{
    private static readonly string Clarinet = File.ReadAllText(
        Path.Combine(
            typeof(ServiceTests)
                .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
                .Single(a => a.Key == "Top")
                .Value!,
            "samples",
            "Instruments",
            "clarinet.json"
        )
    );

    [Fact]
    public async Task Resonances_are_those_of_the_library()
    {
        var document = ColumnDocument.Parse(Clarinet);
        var column = document.ToColumn("three");
        var expected = column.FirstResonances(2);
        var answer = await Answer("/resonances?count=2&fingering=three", Clarinet);
        var list = answer.GetProperty("result").GetProperty("resonances");
        Assert.Equal(
            expected.Select(resonance => resonance.Frequency.Hertz),
            list.EnumerateArray().Select(resonance => resonance.GetProperty("frequencyHz").GetDouble())
        );
        var provenance = answer.GetProperty("provenance");
        Assert.Equal(document.Sha256(), provenance.GetProperty("documentSha256").GetString());
        Assert.Equal("xxxooo", provenance.GetProperty("fingering").GetString());
        Assert.Equal(
            column.CharacteristicImpedance,
            provenance.GetProperty("characteristicImpedancePaSPerM3").GetDouble()
        );
    }

    [Fact]
    public async Task A_curve_is_whole()
    {
        var column = ColumnDocument.Parse(Clarinet).ToColumn();
        var expected = column.Impedance(FrequencyGrid.Linear(100, 1500, 2000));
        var curve = (await Answer("/impedance?fromHz=100&toHz=1500&points=2000", Clarinet)).GetProperty(
            "result"
        );
        Assert.Equal(
            expected.Real.ToArray(),
            curve.GetProperty("rePaSPerM3").EnumerateArray().Select(z => z.GetDouble())
        );
        Assert.Equal(2000, curve.GetProperty("frequencyHz").GetArrayLength());
    }

    [Fact]
    public async Task A_document_comes_back_as_it_is_written()
    {
        var text = (await Answer("/document", Clarinet)).GetRawText();
        Assert.Equal(ColumnDocument.Parse(Clarinet), ColumnDocument.Parse(text));
    }

    [Theory]
    [InlineData("\"15 mm\", \"length\"", "15, \"length\"", "/document", "sections[0].diameter")]
    [InlineData("\"holes\"", "\"hoels\"", "/document", "hoels")]
    [InlineData("{", "[", "/document", null)]
    [InlineData("six", "six", "/resonances?fingering=H4", null)]
    [InlineData("six", "six", "/resonances?count=0", null)]
    [InlineData("six", "six", "/resonances?count=many", null)]
    [InlineData("six", "six", "/impedance?fromHz=5&toHz=2&points=7", null)]
    [InlineData("six", "six", "/impedance?fromHz=5&toHz=1e9&points=7", null)]
    public async Task What_is_wrong_is_said(string old, string replacement, string path, string? place)
    {
        var body = Clarinet.Replace(old, replacement, StringComparison.Ordinal);
        using var response = await Ask(path, body);
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        var problem = await response.Content.ReadFromJsonAsync<JsonElement>();
        Assert.True(problem.GetProperty("detail").GetString()!.Length > 20);
        Assert.Equal(place, problem.TryGetProperty("place", out var told) ? told.GetString() : null);
    }

    [Fact]
    public async Task What_takes_too_long_is_given_up()
    {
        await using var hasty = factory.WithWebHostBuilder(host =>
            host.UseSetting("SecondsForAnAnswer", "0.2")
        );
        using var client = hasty.CreateClient();
        // Close steps without number, by modes.
        var sections = string.Join(
            ",",
            Enumerable
                .Range(0, 3000)
                .Select(i =>
                    $$"""{ "shape": "cylinder", "diameter": "{{20 + i % 7}} mm", "length": "3 mm" }"""
                )
        );
        var text =
            $$"""{ "column": 2, "wavefronts": "multimodal", "sections": [{{sections}}], "farEnd": { "kind": "open" } }""";
        using var response = await client.PostAsync("/resonances", Json(text));
        Assert.Equal(HttpStatusCode.GatewayTimeout, response.StatusCode);
    }

    private async Task<JsonElement> Answer(string path, string body)
    {
        using var response = await Ask(path, body);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        return await response.Content.ReadFromJsonAsync<JsonElement>();
    }

    private async Task<HttpResponseMessage> Ask(string path, string body)
    {
        using var client = factory.CreateClient();
        return await client.PostAsync(path, Json(body));
    }

    private static StringContent Json(string text) => new(text, Encoding.UTF8, "application/json");
}

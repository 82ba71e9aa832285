using NotebookRunner;

// Runs the notebooks of samples/Notebooks without a screen and writes what they show into them: all, or those named.
var names = args.Length > 0 ? args : [.. Repository.Notebooks.Select(Path.GetFileName).OfType<string>()];
using var session = Session.Begin();
foreach (var name in names)
{
    var path = Path.Combine(Repository.NotebookFolder, name);
    var notebook = Notebook.Read(path);
    notebook.WithOutputsOf(session.Run(notebook)).Write(path);
    Console.WriteLine(name);
}

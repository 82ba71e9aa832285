namespace Browser.Tests;

/// <summary>
/// A test that needs a browser. Where none is found it is skipped, with the reason; where CI is "true", as in .ci/run, it fails: a page that
/// nobody looked at must not pass there.
/// </summary>
public sealed class BrowserFactAttribute : FactAttribute
{
    public BrowserFactAttribute()
    {
        if (InstalledBrowser.Path is null && !InstalledBrowser.IsRequired)
        {
            Skip = InstalledBrowser.Missing;
        }
    }
}

/// <summary>The same for a test with data.</summary>
public sealed class BrowserTheoryAttribute : TheoryAttribute
{
    public BrowserTheoryAttribute()
    {
        if (InstalledBrowser.Path is null && !InstalledBrowser.IsRequired)
        {
            Skip = InstalledBrowser.Missing;
        }
    }
}

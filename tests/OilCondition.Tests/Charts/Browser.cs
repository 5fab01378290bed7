using System.Diagnostics;
using System.Net;

namespace OilCondition.Tests.Charts;

/// <summary>Lays a page out in a headless browser, and reads what the page's own script has to say of it.</summary>
internal static class Browser
{
    /// <summary>The lines that a script of the page wrote into an element between <c>BEGIN</c> and the end of that element.</summary>
    public static IReadOnlyList<string> LinesOf(string html)
    {
        var folder = Directory.CreateTempSubdirectory("page");
        try
        {
            var file = Path.Combine(folder.FullName, "page.html");
            File.WriteAllText(file, html);
            var dom = Dump(file, folder.FullName);
            var from = dom.LastIndexOf("BEGIN\n", StringComparison.Ordinal);
            from.ShouldBeGreaterThan(0, "the browser ran the page's script");
            var end = dom.IndexOf("</pre>", from, StringComparison.Ordinal);
            return WebUtility.HtmlDecode(dom[(from + 6)..end]).Split('\n');
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string Dump(string file, string profile)
    {
        var start = new ProcessStartInfo(ChromiumFactAttribute.Browser!)
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (
            var argument in new[]
            {
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                $"--user-data-dir={Path.Combine(profile, "profile")}",
                "--dump-dom",
                new Uri(file).AbsoluteUri,
            }
        )
        {
            start.ArgumentList.Add(argument);
        }

        using var browser = Process.Start(start)!;
        var output = browser.StandardOutput.ReadToEndAsync();
        _ = browser.StandardError.ReadToEndAsync();
        if (!browser.WaitForExit(TimeSpan.FromMinutes(3)))
        {
            browser.Kill(entireProcessTree: true);
            throw new TimeoutException("The browser did not end within three minutes.");
        }

        return output.GetAwaiter().GetResult();
    }
}

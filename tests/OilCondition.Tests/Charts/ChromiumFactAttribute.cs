namespace OilCondition.Tests.Charts;

/// <summary>A test that needs a browser. Where there is none it is skipped, except on a build server, which installs one.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class ChromiumFactAttribute : FactAttribute
{
    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome"];

    public ChromiumFactAttribute()
    {
        if (Browser is null && Environment.GetEnvironmentVariable("CI") is null or "")
        {
            Skip = "no browser: install chromium";
        }
    }

    public static string? Browser { get; } =
        (Environment.GetEnvironmentVariable("PATH") ?? "")
            .Split(Path.PathSeparator)
            .SelectMany(folder => Names.Select(name => Path.Combine(folder, name)))
            .FirstOrDefault(File.Exists);
}

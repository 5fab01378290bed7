namespace OilCondition.Tests.Architecture;

/// <summary>Files of the repository that tests hold against the code.</summary>
public static class RepositoryFiles
{
    private static readonly Lazy<string> Root = new(() =>
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "OilCondition.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName
            ?? throw new InvalidOperationException("OilCondition.sln was not found above the tests.");
    });

    public static string Read(params string[] path) => File.ReadAllText(PathOf(path));

    public static string PathOf(params string[] path) => Path.Combine([Root.Value, .. path]);
}

using Pages;

var folder = new DirectoryInfo(AppContext.BaseDirectory);
while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "OilCondition.sln")))
{
    folder = folder.Parent;
}

if (folder is null)
{
    Console.Error.WriteLine("OilCondition.sln was not found above this program.");
    return 1;
}

foreach (var (name, text) in MadePages.All)
{
    File.WriteAllText(Path.Combine(folder.FullName, "docs", name), text);
    Console.WriteLine($"docs/{name}");
}

return 0;

using Schemas;

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

foreach (var document in ContractSchema.All)
{
    var file = Path.Combine(folder.FullName, "docs", "schemas", document.FileName);
    File.WriteAllText(file, document.Write());
    Console.WriteLine($"docs/schemas/{document.FileName}");
}

return 0;

using System.Globalization;
using HarrowPoint;
using HarrowPoint.Generator;
using HarrowPoint.Year;
using OilCondition;
using OilCondition.Reporting;

// The whole job on files, for the invented pumped-storage station Harrow Point:
//   dotnet run --project examples/HarrowPoint                   assess the station, write JSON and a report
//   dotnet run --project examples/HarrowPoint -- generate DIR   write the data files afresh (the same every time)
//   dotnet run --project examples/HarrowPoint -- pictures DIR   draw the charts of docs/charts.md
//   dotnet run --project examples/HarrowPoint -- redraw COUNT   draw the scatter anew and count what is found
//   dotnet run --project examples/HarrowPoint -- years COUNT    draw years and compare policies of treating
CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
Console.SetOut(new NarrowWriter(Console.Out));
if (args is ["generate", var folder])
{
    foreach (var (name, text) in StationGenerator.Generate())
    {
        File.WriteAllText(Path.Combine(folder, name), text);
        Console.WriteLine($"wrote {name}, {text.Length} characters");
    }

    return 0;
}

var data = Path.Combine(AppContext.BaseDirectory, "Data");
if (args is ["redraw", var number] && int.TryParse(number, out var count) && count is > 0 and <= 10_000)
{
    Redraws.Of(data, firstSeed: 1000, count).Write(Console.Out, Truth.Read(Path.Combine(data, "truth.json")));
    return 0;
}

if (args is ["years", var drawn] && int.TryParse(drawn, out var years) && years is > 0 and <= 10_000)
{
    Years.Write(Console.Out, StationRecords.Read(data).Station, years);
    return 0;
}

if (args is ["pictures", var pictures])
{
    Pictures.Write(Console.Out, pictures, StationRecords.Read(data));
    return 0;
}

if (args.Length > 0)
{
    Console.Error.WriteLine("usage: HarrowPoint [generate FOLDER | pictures FOLDER | redraw COUNT | years COUNT]");
    return 2;
}
var station = StationRecords.Read(data);
var output = Path.GetFullPath(Path.Combine("artifacts", "harrow-point"));
Directory.CreateDirectory(output);

Console.WriteLine("Harrow Point, an INVENTED pumped-storage station. No figure below is plant data.");
Console.WriteLine();
Console.WriteLine(
    $"Read: {station.Machines.Sum(one => one.History.Samples.Count)} samples and "
        + $"{station.Machines.Sum(one => one.History.SensorReadings.Count)} sensor readings of {station.Machines.Count} machines."
);
Console.WriteLine("At hand to treat oil with:");
foreach (var equipment in station.Station.Equipment)
{
    var where = equipment.ConnectsTo.Count == 0 ? "any machine" : string.Join(", ", equipment.ConnectsTo);
    Console.WriteLine($"  {equipment}, for {where}");
    if (equipment is { DischargePump: { } draws, VacuumPump: { } holds })
    {
        Console.WriteLine($"    {draws}; {holds}");
    }
}

Console.WriteLine($"Not taken over, each with its place and reason ({station.Problems.Count}):");
foreach (var problem in station.Problems)
{
    Console.WriteLine($"  {problem}");
}

Console.WriteLine($"Columns kept as texts: {string.Join(", ", station.TextColumns)}");

Console.WriteLine("Suspect samples and where they seem to come from:");
foreach (var origin in SampleOrigin.Find([.. station.Machines.Select(one => one.History)]))
{
    Console.WriteLine(
        $"  {origin.Sample} of {origin.RecordedFor.Id} resembles the oil of {origin.Resembles.Id}"
            + (origin.Counterpart is { } other ? $"; changed places with {other.SampleNumber}" : "")
    );
}

var assessments = station
    .Machines.Select(one => ConditionAssessor.Assess(one.History, one.Limits, new AssessmentOptions(station.AsOf)))
    .ToList();
var decisions = Decisions.Of(station, assessments);
foreach (var assessment in ConditionReport.InOrder(assessments, decisions))
{
    ConsoleReport.Write(Console.Out, assessment);
    File.WriteAllText(Path.Combine(output, assessment.History.Machine.Id + ".json"), assessment.ToJson());
}

var outcome = Decisions.Schedule(station, decisions);
foreach (var decision in decisions)
{
    var name =
        $"{decision.Assessment.History.Machine.Id}-{string.Join("-", decision.Problems.Select(one => one.Subject))}";
    File.WriteAllText(Path.Combine(output, $"decision-{name}.json"), decision.ToJson());
}

const string Title = "Oil condition, Harrow Point";
var options = new ReportOptions(
    "Harrow Point is invented; no figure on this page is plant data.",
    decisions,
    Decisions.Calendar(outcome),
    Pictures.OfPlan(outcome),
    Pictures.OfReport
);
File.WriteAllText(Path.Combine(output, "report.html"), ConditionReport.ToHtml(Title, assessments, options));
File.WriteAllText(Path.Combine(output, "report.md"), ConditionReport.ToMarkdown(Title, assessments, options));

Console.WriteLine();
Console.WriteLine("Cautions that go with the work above (each recommendation in the JSON and the report has its own):");
foreach (
    var caution in assessments.SelectMany(one => one.Recommendations).SelectMany(one => one.Cautions).Distinct().Order()
)
{
    Console.WriteLine($"   {Sentences.English.Of(caution)}");
}

Decisions.Write(Console.Out, decisions, outcome);
WhatIf.Write(Console.Out, assessments);
TruthReport.Write(Console.Out, Truth.Read(Path.Combine(data, "truth.json")), station, assessments);
Trust.Write(Console.Out, station);
Console.WriteLine();
Console.WriteLine(
    $"Written: {assessments.Count + decisions.Count} JSON files, report.html and report.md in {Path.GetRelativePath(Environment.CurrentDirectory, output)}"
);
return 0;

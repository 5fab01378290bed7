using System.Globalization;
using System.Text.Json;
using CleanupJob;
using OilCondition.Charts;
using OilCondition.Cleanup;
using OilCondition.Treatment;
using UnitsNet;

// A cleanup from plan to record, for the cooler-leak sump of the invented station Harrow Point:
//   dotnet run --project examples/CleanupJob
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var output = Path.GetFullPath(Path.Combine("artifacts", "cleanup-job"));
Directory.CreateDirectory(output);
Console.WriteLine("Harrow Point is INVENTED. No figure below is plant data.\n");

Console.WriteLine($"Task: {Job.Task}; {Job.Task.Reservoir.WaterIngress.GramsPerHour:0} g/h comes in.\n");
var table = Job.Compare();
Console.WriteLine(table);
Console.WriteLine("At invented prices, in the currency of your choice:");
foreach (var row in table.Rows)
{
    if (row.TryCostAt(Job.Prices, out var cost))
    {
        Console.WriteLine($"  {row.Treatment.Name, -22} {cost}");
    }
}

var plan = Job.Plan;
Console.WriteLine($"\nPlan by vacuum dehydration: {plan}");
foreach (var state in plan.States.Where((_, i) => i % 6 == 0))
{
    Console.WriteLine($"  {state}");
}

Console.WriteLine($"With what titration, curve, unit and gauge may be out by: {plan.Band()}");

// HeaterLimited reads 'heater limited'.
var doubts = string.Concat(
    plan.Flags.ToString().Select(one => char.IsUpper(one) ? $" {char.ToLowerInvariant(one)}" : $"{one}")
);
Console.WriteLine($"Mind: {doubts.Replace("  ", " ", StringComparison.Ordinal).Trim()}\n");
Console.WriteLine("What each setting is worth, changed by a quarter, or by 5 K:");
Console.WriteLine(PlanSensitivity.Of(Job.Task, Job.Unit));
Console.WriteLine("\nIn a row, stage by stage:");
foreach (var step in Job.Train.Run(Job.Task))
{
    Console.WriteLine($"  {step}");
}

Console.WriteLine("\nSizes for the target within 48 h, one thing changed at a time:");
Console.WriteLine(PlanSizing.Of(Job.Task, Job.Unit, TimeSpan.FromHours(48)));
Console.WriteLine($"\nThe pumps on this plan: {EquipmentCheck.Of(plan, Job.Discharge, Job.Vacuum)}");
Console.WriteLine("\nTo be proved before the start:");
foreach (var interlock in Interlock.Of(Job.Task, Job.Unit, Job.Vacuum, Job.Discharge))
{
    Console.WriteLine($"  {interlock}");
}

Console.WriteLine("\nLive, from the log:");
var log = Job.Log(Path.Combine(AppContext.BaseDirectory, "Data", "sensor-HP-TGB1-2025-12.csv")).ToList();
var monitor = new CleanupMonitor(Job.Monitoring);
foreach (var reading in log)
{
    monitor.Take(reading);
    if ((reading.At - Job.StartedAt).TotalHours % 6 == 0)
    {
        var now = monitor.Status();
        Console.WriteLine($"  {now.AsOf:MM-dd HH:mm}  {now}");
    }
}

var status = monitor.Status();
var planned = Job.Monitoring.Planned!;
var beside = ObservedAgainstPlanned.Of(status.Curve, planned);
Console.WriteLine($"\nFit: {status.Curve}");
Console.WriteLine("Observed and planned:");
Console.WriteLine($"  removal per pass {beside.RemovalPerPass}: {Words(beside.RemovalAgreement)}");
Console.WriteLine($"  water coming in  {beside.WaterIngress}: {Words(beside.IngressAgreement)}");
Console.WriteLine($"  level            {beside.Level}: {Words(beside.LevelAgreement)}");
Console.WriteLine($"  planned          {planned}\n");

var diagnosis = StallDiagnosis.Of(status, RunConditions.Of(plan, Job.Celsius(60), Pressure.FromPascals(1500)));
var record = CleanupRecord.Of(status, Job.Facts, diagnosis);
Console.WriteLine(record.ToText());

if (UnitCalibration.TryFrom(record, plan, out var found, out var reason))
{
    var next = PurificationPlan.Create(Job.Task, found.For(Job.Unit));
    Console.WriteLine($"The unit's own figure, for the next plan: {found}");
    Console.WriteLine($"  the same task again: {next.Band(found.Errors(InputErrors.Usual))}\n");
}
else
{
    Console.WriteLine($"No figure for the next plan: {reason}\n");
}

Console.WriteLine("Had the cooler gone on leaking (invented log):");
var leaking = CleanupMonitor.Of(Job.Monitoring, StalledRun.Log()).Status();
var why = StallDiagnosis.Of(
    leaking,
    RunConditions.Of(plan, Job.Celsius(60), Pressure.FromPascals(1500), condensateFlow: MassFlow.FromGramsPerHour(9.6))
);
Console.WriteLine($"{leaking}\n");
Console.WriteLine(CleanupRecord.Of(leaking, Job.FactsOf(240, 0.78), why).ToText());
File.WriteAllText(Path.Combine(output, "record.json"), record.ToJson());
var chart = CleanupChart.Of("Water in HP-TGB1 during its cleanup (INVENTED station Harrow Point)", status, log);
File.WriteAllBytes(Path.Combine(output, "cleanup.png"), chart.ToPng());
Console.WriteLine(
    $"Written: record.json and cleanup.png in {Path.GetRelativePath(Environment.CurrentDirectory, output)}"
);

static string Words(Enum value) => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString()).Replace('-', ' ');

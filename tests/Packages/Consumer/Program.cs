using OilCondition;
using OilCondition.DataFrames;
using OilCondition.Interactive;
using OilCondition.LabFiles;
using OilCondition.Reporting;
using OilCondition.Water;
using UnitsNet;

// What a newcomer's first project does with the packages; the figures are invented.
var curve = SaturationCurve.FromTwoPoints(
    "invented oil",
    Temperature.FromDegreesCelsius(20),
    MassFraction.FromPartsPerMillion(100),
    Temperature.FromDegreesCelsius(60),
    MassFraction.FromPartsPerMillion(400),
    Source.UserData("invented")
);
var machine = new Machine(
    "M1",
    "invented machine",
    new Oil("invented oil", new Dictionary<Measurand, Reading>(), curve),
    Volume.FromLiters(500),
    Temperature.FromDegreesCelsius(60),
    Temperature.FromDegreesCelsius(20)
);
var file = LabFile.Read(
    new StringReader("Machine,Sample No,Date,Water [ppm]\nM1,S1,2026-03-14,250\n"),
    "lab.csv",
    ColumnMap.Default
);
var limits = LimitSet.Parse(
    """
    { "name": "first", "limits": [ { "measurand": "water-content", "kind": "absolute", "upper": { "alert": 200 },
      "source": { "kind": "user-data", "text": "invented" } } ] }
    """
);
var assessment = ConditionAssessor.Assess(
    OilHistory.Create(machine, file.SamplesOf("M1"), [], []),
    limits,
    new AssessmentOptions(new DateTimeOffset(2026, 3, 20, 0, 0, 0, TimeSpan.Zero))
);
var html = ConditionReport.ToHtml("first report", [assessment]);
foreach (var alert in assessment.Alerts)
{
    Console.WriteLine($"{alert.Key}: {alert.Problem.Statement}");
}

var readings = OilRecords.Of(assessment.History).ToLongFrame();
using var parquet = new MemoryStream();
await ParquetFrame.WriteAsync(readings, parquet);
parquet.Position = 0;
var again = OilRecords.FromLong(await ParquetFrame.ReadAsync(parquet)).SamplesOf("M1");
Console.WriteLine(FleetFrames.Machines([assessment]));
var shown = ResultHtml.Of(assessment);

return
    again.Count == 1
    && assessment.Alerts.Count == 1
    && html.Contains("M1/undated/water", StringComparison.Ordinal)
    && shown.Contains("<svg ", StringComparison.Ordinal)
    ? 0
    : 1;

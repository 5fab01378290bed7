using System.Text.RegularExpressions;
using Microsoft.Data.Analysis;
using OilCondition.DataFrames;
using OilCondition.LabFiles;
using OilCondition.Tests.Architecture;
using OilCondition.Water;

namespace OilCondition.Tests.DataFrames;

/// <summary>docs/frames.md names every column that there is, and none that there is not.</summary>
public partial class FramePageTests
{
    private static readonly string Page = RepositoryFiles.Read("docs", "frames.md");

    [Fact]
    public void Every_column_is_in_the_table_and_the_table_has_no_other()
    {
        using var file = LabFile.Open(HarrowPointFleet.LabFilePath, ColumnMap.Default);
        var account = FileAccount.Of(file);
        DataFrame[] frames =
        [
            account.Problems,
            account.Columns,
            account.Records.ToLongFrame(),
            SeriesFrame.Of(HarrowPointFleet.Assessments[0].States[0].Trend.Series),
            FleetFrames.Machines(HarrowPointFleet.Assessments),
            FleetFrames.Lives(HarrowPointFleet.Assessments),
            FleetFrames.Findings(HarrowPointFleet.Assessments),
            FleetFrames.Evidence(HarrowPointFleet.Assessments),
            FleetFrames.Options(HarrowPointFleet.Decisions),
        ];
        var there = frames
            .SelectMany(frame => frame.Columns)
            .Select(column => column.Name)
            .ToHashSet(StringComparer.Ordinal);

        // Those of wide frames have names that a user's measurands and texts give them; the page has one of each kind.
        there.UnionWith(["water-content [mg/kg]", "water-content qualifier", "water-content method", "text: Remark"]);
        NamesUnder("## Columns\n").ShouldBe(there, ignoreOrder: true);
        OilRecords.FromWide(account.Records.ToWideFrame()).OtherColumns.ShouldBeEmpty();
        account.Records.ToWideFrame().Columns.Select(column => column.Name).ShouldContain("text: Remark");
    }

    [Fact]
    public void Every_column_that_is_computed_is_in_its_table()
    {
        var curve = PublishedSaturationCurves.TransformerMineralOil;
        DoubleDataFrameColumn none = new("none", 0);
        DataFrame[] frames =
        [
            WaterColumns.Saturation(curve, none),
            WaterColumns.Split(curve, none, none),
            WaterColumns.Sensed(curve, none, none),
            WaterColumns.SeparationTemperature(curve, none),
            CleanlinessColumns.Codes(none, none, none),
            ViscosityColumns.Index(none, none),
            ViscosityColumns.At(none, none, none),
        ];

        frames
            .SelectMany(frame => frame.Columns)
            .Select(column => $"`{column.Name}`")
            .Where(name => !Page.Contains(name))
            .ShouldBeEmpty();
    }

    /// <summary>The names in the first cells of a table.</summary>
    private static HashSet<string> NamesUnder(string heading) =>
        [
            .. Page.Split(heading)[1]
                .Split("\n## ")[0]
                .Split('\n')
                .Where(line => line.StartsWith("| `", StringComparison.Ordinal))
                .SelectMany(line => Name().Matches(line.Split(" | ")[0]).Select(match => match.Groups["name"].Value)),
        ];

    [GeneratedRegex("`(?<name>[^`]+)`", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Name();
}

using Microsoft.Data.Analysis;
using OilCondition.DataFrames;
using OilCondition.LabFiles;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.DataFrames;

/// <summary>The three cells that an analyst wishes to write, as they were written before there was any code for them.</summary>
public class NotebookTests
{
    private const string File = """
        Machine,Sample No,Date,Water [ppm],Iron,Remark
        M1,S1,2026-03-14,180,<5,
        M1,S2,2026-04-14,-12,7,"dark, retest?"
        M2,S3,2026-04-15,x,9,
        ,S4,2026-04-16,40,2,
        """;

    [Fact]
    public void A_file_as_a_frame_with_its_bad_cells_beside_the_rows_they_stand_in()
    {
        using var file = LabFile.Open(new StringReader(File), "lab.csv", ColumnMap.Default);
        var account = FileAccount.Of(file);
        var readings = account.Records.ToLongFrame();
        var bad = account.Problems.Merge(
            readings,
            ["sheet", "line"],
            ["sheet", "line"],
            joinAlgorithm: JoinAlgorithm.Left
        );

        var refused = bad.Filter(bad["outcome"].ElementwiseEquals("refused"));
        Texts(refused, "cell").ShouldBe(["-12", "-12", "x", ",S4,2026-04-16,40,2,"]);
        Texts(refused, "sampleNumber").ShouldBe(["S2", "S2", "S3", null]);
        Texts(refused, "header").ShouldBe([null, "Remark", null, null]);
        Texts(refused, "reason")[0]!.ShouldContain("allowed: 0 to 500000 mg/kg");
        account.Columns.Rows.Count.ShouldBe(6);
    }

    [Fact]
    public void A_fleet_as_lives_by_the_date_to_plan_with()
    {
        var lives = FleetFrames.Lives(HarrowPointFleet.Assessments).OrderBy("p10Utc");

        var p10 = (PrimitiveDataFrameColumn<DateTime>)lives["p10Utc"];
        var dated = p10.TakeWhile(at => at is not null).Select(at => at!.Value).ToList();
        dated.Count.ShouldBeGreaterThan(3);
        dated.ShouldBeInOrder();
        dated.Count.ShouldBe((int)(p10.Length - p10.NullCount), "null comes last");
    }

    [Fact]
    public void Titrations_and_a_sensor_as_saturation()
    {
        var curve = SaturationCurve.FromTwoPoints(
            "bearing oil", // invented
            Temperature.FromDegreesCelsius(20),
            MassFraction.FromPartsPerMillion(85),
            Temperature.FromDegreesCelsius(60),
            MassFraction.FromPartsPerMillion(310),
            Source.UserData("site laboratory")
        );
        var history = HarrowPointFleet.Station.Machines.First(one => one.History.SensorReadings.Count > 0).History;
        var wide = OilRecords.Of(history).ToWideFrame();
        var temperature = wide.ValuesOf(Measurands.OilTemperature);
        wide = wide.With(WaterColumns.Split(curve, wide.ValuesOf(Measurands.WaterContent), temperature))
            .With(WaterColumns.Sensed(curve, wide.ValuesOf(Measurands.RelativeSaturation), temperature));

        wide.Rows.Count.ShouldBe(history.Samples.Count + history.SensorReadings.Count);
        var sensed = (PrimitiveDataFrameColumn<double>)wide["sensed dissolved [mg/kg]"];
        var split = (PrimitiveDataFrameColumn<double>)wide["dissolved [mg/kg]"];
        sensed.NullCount.ShouldBeLessThan(sensed.Length);
        split.NullCount.ShouldBeLessThan(split.Length);
        for (var row = 0; row < wide.Rows.Count; row++)
        {
            (split[row] is not null && sensed[row] is not null).ShouldBeFalse(
                "a titration and a sensor row are two rows"
            );
        }
    }

    private static List<string?> Texts(DataFrame frame, string name) => [.. ((StringDataFrameColumn)frame[name])];
}

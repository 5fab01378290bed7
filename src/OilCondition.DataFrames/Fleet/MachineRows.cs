using OilCondition.Prognosis;
using OilCondition.Text;
using OilCondition.Water;

namespace OilCondition.DataFrames;

/// <summary>A row for each machine.</summary>
internal static class MachineRows
{
    public static readonly FrameShape<ConditionAssessment> Shape = FleetKeys
        .Of<ConditionAssessment>(one => one)
        .Text(FrameNames.Name, one => one.History.Machine.Name)
        .Text("oil", one => one.History.Machine.Oil.Name)
        .Whole("samples", one => one.History.Samples.Count)
        .Text("worst", one => PlainText.Kebab(one.Worst))
        .Whole("problems", one => one.Problems.Count)
        .Text("cleanlinessCode", one => one.Cleanliness?.ToString())
        .Number("waterMgPerKg", one => Running(one)?.Total.PartsPerMillion)
        .Number("freeRunningMgPerKg", one => Running(one)?.Free.PartsPerMillion)
        .Number("freeStandstillMgPerKg", one => (one.Water as WaterInOil.Split)?.Standstill.Free.PartsPerMillion)
        .Flag("underTreatment", one => one.Cleanup is not null)
        .Text("firstMeasurand", one => First(one)?.Series.Measurand.Id)
        .Text("firstSide", one => First(one) is { } life ? PlainText.Kebab(life.Side) : null)
        .Number("firstLimit", one => First(one)?.Limit)
        .Text("firstUnit", one => First(one)?.Series.Measurand.Unit)
        .Number("firstChance", one => one.First.Shares.Count > 0 ? one.First.Shares[0].Chance : null)
        .Flag("crossed", one => one.First.IsCrossed)
        .Moment("p10Utc", one => At(one.First, 0.1))
        .Moment("p50Utc", one => At(one.First, 0.5))
        .Moment("p90Utc", one => At(one.First, 0.9))
        .NextSample(one => one.NextSample);

    private static WaterState? Running(ConditionAssessment one) => (one.Water as WaterInOil.Split)?.Running;

    private static RemainingLife? First(ConditionAssessment one) =>
        one.First.Shares.Count > 0 ? one.First.Shares[0].Life : null;

    private static DateTimeOffset? At(FirstCrossing first, double chance) =>
        !first.IsCrossed && first.TryAt(chance, out var at) ? at : null;
}

using OilCondition;
using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Water;

namespace HarrowPoint;

/// <summary>One machine's assessment as text.</summary>
public static class ConsoleReport
{
    public static void Write(TextWriter to, ConditionAssessment assessment)
    {
        var machine = assessment.History.Machine;
        var worst =
            assessment.Worst == Severity.Information ? "normal" : assessment.Worst.ToString().ToLowerInvariant();
        to.WriteLine();
        to.WriteLine($"== {machine.Id}  {machine.Name}: {worst}");
        to.WriteLine(
            $"   {machine.Oil.Name}, {machine.ChargeVolume.Liters:0} L, oil charge {assessment.Charge}, since {assessment.Charge.Since:yyyy-MM-dd}; ISO 4406 code {assessment.Cleanliness?.ToString() ?? "not counted"}"
        );
        foreach (var problem in assessment.Problems)
        {
            to.WriteLine($"   {problem.Severity.ToString().ToUpperInvariant()} {problem.Statement}");
        }

        if (assessment.NextSample is { } next)
        {
            to.WriteLine($"   {Sentences.English.Of(next)}");
        }

        foreach (var recommendation in assessment.Recommendations)
        {
            to.WriteLine($"   -> {recommendation}");
        }

        Water(to, assessment.Water);
        foreach (var state in assessment.States)
        {
            State(to, state);
        }

        foreach (var alert in assessment.Alerts)
        {
            to.WriteLine($"   {alert.Severity.ToString().ToLowerInvariant()} key {alert.Key}");
        }
    }

    private static void Water(TextWriter to, WaterInOil water)
    {
        if (water is not WaterInOil.Split split)
        {
            to.WriteLine(
                water is WaterInOil.NoSaturationCurve
                    ? "   Water split: not known, nobody has measured this oil's saturation (two points would do)"
                    : "   Water split: no water reading of this oil fill"
            );
            return;
        }

        to.WriteLine(
            $"   Water {Measurands.WaterContent.Text(split.Point.Reading)} on {split.Point.At:yyyy-MM-dd HH:mm}"
        );
        Line(to, "running", split.Running, split.Point.Reading);
        Line(to, "standstill", split.Standstill, split.Point.Reading);
    }

    private static void Line(TextWriter to, string when, WaterState state, Reading total) =>
        to.WriteLine(
            $"      {when, -11}{state.Saturation.Temperature.DegreesCelsius, 4:0} °C: saturation {Measurands.WaterContent.Text(state.Saturation.Content.PartsPerMillion)}, dissolved {(state.HasFreeWater ? Measurands.WaterContent.Text(state.Dissolved.PartsPerMillion) : Measurands.WaterContent.Text(total).Split(' ')[0])}, free {Measurands.WaterContent.Text(state.Free.PartsPerMillion, total.Value)} mg/kg"
                + (state.Saturation.IsExtrapolated ? " (curve extrapolated)" : "")
        );

    private static void State(TextWriter to, MeasurandState state)
    {
        var word =
            state.Worst.State == LimitState.NotDetermined
                ? $"not determined, {Sentences.English.Of(state.Worst.Reason)}"
                : state.Worst.State.ToString().ToLowerInvariant();
        var latest = state.Latest is { } point ? state.Measurand.Text(point.Reading) : "no reading";
        to.WriteLine(
            $"      {state.Measurand.Name, -24}{latest, -18}{word, -10} {Sentences.English.Of(state)}{Life(state)}"
        );
    }

    /// <summary>The nearest crossing of the next five years; what may be one day in decades is no news.</summary>
    private static string Life(MeasurandState state) =>
        state
            .Lives.OfType<RemainingLife.Forecast>()
            .Where(life => life.Crossing.ChanceBefore(life.Crossing.AsOf.AddYears(5)) >= 0.1)
            .OrderByDescending(life => life.Crossing.ChanceBefore(life.Crossing.AsOf.AddYears(5)))
            .Select(life => $"; {Sentences.English.Of(state, life)}")
            .FirstOrDefault("");
}

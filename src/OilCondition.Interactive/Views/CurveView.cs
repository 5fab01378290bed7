using OilCondition.Charts;
using OilCondition.Cleanup;
using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition.Interactive.Views;

/// <summary>A cleanup curve: what was fitted, how well it is known, and what makes it doubtful.</summary>
internal static class CurveView
{
    public static View Of(CleanupCurve curve)
    {
        var view = new View().Heading("Cleanup curve").Line(curve.ToString());
        if (!curve.HasCurve)
        {
            return view;
        }

        view.Line("A curve does not know the unit of its readings: its levels are in that unit.");
        view.Figures(
            ("floor, in the unit of the readings", Known.Text(curve.Floor, curve.FloorInterval())),
            ("rate, 1/h", Known.Text(curve.RatePerHour, curve.RateIntervalPerHour())),
            ("half-life of the excess, h", curve.HalfLifeIntervalHours().ToString()),
            (
                $"at the first moment, {PlainText.Time(curve.Origin)} ({Offset(curve.Origin)}), in the unit of the readings",
                PlainText.Number(curve.Start)
            ),
            (
                "scatter of one reading at the floor, in the unit of the readings",
                PlainText.Number(curve.ScatterAt(curve.Floor))
            ),
            (
                "readings used, set aside, flagged",
                $"{curve.Count}, {curve.LeftOutReadings.Count}, {curve.FlaggedReadings.Count}"
            ),
            ("time constants that the readings span", PlainText.Number(curve.ObservedTimeConstants))
        );
        return view.Lines(Doubts(curve)).Picture(CleanupChart.Of(curve));
    }

    private static string Offset(DateTimeOffset at) => FormattableString.Invariant($"UTC{at:zzz}");

    private static IEnumerable<string> Doubts(CleanupCurve curve)
    {
        if (curve.Status != ExponentialDecayStatus.Determined)
        {
            yield return $"What the readings tell: {PlainText.Spaced(curve.Status)}.";
        }

        if (curve.CoverageInDoubt)
        {
            yield return "Intervals cover less often than they say: the residuals follow one another, or the course is not one exponential.";
        }

        if (curve.SuggestedNoise != curve.Options.Noise)
        {
            yield return $"The residuals speak for {PlainText.Spaced(curve.SuggestedNoise)} scatter, not for {PlainText.Spaced(curve.Options.Noise)}: intervals may be too narrow.";
        }
    }
}

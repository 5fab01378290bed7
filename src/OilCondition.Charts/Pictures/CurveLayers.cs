using OilCondition.Charts.Drawing;
using OilCondition.Cleanup;
using OilCondition.Statistics;

namespace OilCondition.Charts.Pictures;

/// <summary>A fitted fall with its band: solid as far as there are readings, dashed beyond.</summary>
internal static class CurveLayers
{
    private const int Parts = 80;

    /// <summary>The layers of a curve.</summary>
    /// <param name="page">Words and dates.</param>
    /// <param name="height">What a value is on the axis.</param>
    /// <param name="curve">The curve.</param>
    /// <param name="time">The time axis.</param>
    /// <param name="confidence">Level of the band.</param>
    public static IEnumerable<Layer> Of(
        Page page,
        Func<double, double> height,
        CleanupCurve curve,
        TimeAxis time,
        double confidence
    )
    {
        var texts = page.Texts;
        if (!curve.HasCurve)
        {
            yield break;
        }

        var begin = curve.FirstReadingAt > curve.Origin ? curve.FirstReadingAt : curve.Origin;
        var (from, to) = (time.Days(begin), time.To);
        var places = Enumerable
            .Range(0, Parts + 1)
            .Select(i => (Day: from + (to - from) * i / Parts, At: begin.AddDays((to - from) * i / Parts)))
            .ToList();
        var band = places
            .Select(one => (one.Day, Band: curve.BandAt(one.At, BandKind.Mean, confidence)))
            .Where(one => one.Band.Lower is not null && one.Band.Upper is not null)
            .ToList();
        if (band.Count > 1)
        {
            yield return new Shade(
                texts.Say("curve.band", ("confidence", texts.Reported(100 * confidence))),
                Ink.PaleBlue,
                [
                    .. band.Select(one => new Spot(one.Day, height(one.Band.Upper!.Value))),
                    .. Enumerable.Reverse(band).Select(one => new Spot(one.Day, height(one.Band.Lower!.Value))),
                ]
            );
        }

        Trace Part(string key, Dash dash, Func<DateTimeOffset, bool> which) =>
            new(
                key,
                Ink.Blue,
                dash,
                [.. places.Where(one => which(one.At)).Select(one => new Spot(one.Day, height(curve.ValueAt(one.At))))]
            );
        yield return Part(texts["curve.fitted"], Dash.Solid, at => at <= curve.LastReadingAt);
        var ahead = Part(texts["curve.ahead"], Dash.Short, at => at >= curve.LastReadingAt);
        if (ahead.Spots.Count > 1)
        {
            yield return ahead;
        }
    }
}

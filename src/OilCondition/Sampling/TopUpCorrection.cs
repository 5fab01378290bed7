using OilCondition.Text;
using UnitsNet;

namespace OilCondition;

/// <summary>Takes the dilution by top-ups out of a series, so that its slope is what the machine does to the oil.</summary>
/// <remarks>
/// <para>
/// A top-up of volume v makes good oil that was lost from a charge of volume V: the value before it, C, becomes
/// C − f (C − N) with f = v / V and N the new oil's value. The correction lowers (or lifts) every earlier reading by these drops, so that
/// all readings refer to the charge as it is now: the latest reading after the last top-up is unchanged, and a forecast from the series
/// assumes that no further top-up comes to help.
/// </para>
/// <para>
/// C at the moment of a top-up is not measured. Between the readings on both sides the machine is taken to work at an even rate R per
/// interval, which the readings and the drops fix exactly: C(b) = C(a) + R − sum of drops, drop = f (C(a) + s R − earlier drops − N), with s
/// the elapsed part of the interval. After the last reading R is not known and taken as 0. Before the first reading nothing is corrected. A
/// reading that is only a bound counts as its figure.
/// </para>
/// <para>
/// A corrected figure may fall below what the measurand can have: of the wear that such a reading tells of, nothing is left in the charge.
/// It is then kept as a bound, at most the lowest plausible value (<c>&lt;0</c>): its rank in a trend is right and its figure does not flatten
/// a forecast, as a 0 would. Those readings stand in <see cref="Bounded"/>.
/// </para>
/// <para>
/// Follows from the balance of a charge of constant volume (Source: derived). Oil that was lost by evaporation leaves its metals
/// behind and needs no correction; do not record that as a top-up of leaked oil. Top-ups that leave less than a tenth of the oil between
/// one reading and the next are an oil change or a wrong volume, and what the machine did meanwhile cannot be told from two readings:
/// nothing is corrected (common practice, no source).
/// </para>
/// </remarks>
internal sealed class TopUpCorrection
{
    /// <summary>Share of the oil that must be left between two readings: the scatter of a reading enters the drops divided by it.</summary>
    private const double LeastShareLeft = 0.1;

    private TopUpCorrection(
        MeasurandSeries series,
        TopUpOutcome outcome,
        IReadOnlyList<TopUp> topUps,
        double total = 0,
        IReadOnlyList<SeriesPoint>? bounded = null
    )
    {
        Series = series;
        Outcome = outcome;
        TopUps = topUps;
        TotalDrop = total;
        Bounded = bounded ?? [];
    }

    /// <summary>The series, corrected or as it was.</summary>
    public MeasurandSeries Series { get; }

    /// <summary>Whether it is corrected, and why not.</summary>
    public TopUpOutcome Outcome { get; }

    /// <summary>The top-ups since the first reading.</summary>
    public IReadOnlyList<TopUp> TopUps { get; }

    /// <summary>What all top-ups together took off the value, in the measurand's unit; 0 unless corrected.</summary>
    public double TotalDrop { get; }

    /// <summary>The points of the series whose corrected figure would lie below the measurand's lowest plausible value, and which are bounds therefore.</summary>
    public IReadOnlyList<SeriesPoint> Bounded { get; }

    /// <summary>Corrects a series of one machine's history.</summary>
    /// <param name="series">The readings.</param>
    /// <param name="history">The records with the top-ups, the charge volume and the new oil's values.</param>
    /// <param name="asOf">Now: later top-ups are not looked at.</param>
    /// <returns>The series and what was done.</returns>
    public static TopUpCorrection Of(MeasurandSeries series, OilHistory history, DateTimeOffset asOf)
    {
        Guard.NotNull(series);
        Guard.NotNull(history);
        return history.Events.Count == 0 || series.Points.Count == 0
            ? new TopUpCorrection(series, TopUpOutcome.NoTopUp, [])
            : Correct(series, history, asOf);
    }

    private static TopUpCorrection Correct(MeasurandSeries series, OilHistory history, DateTimeOffset asOf)
    {
        SeriesPoint[] points = [.. series.Points];
        var topUps = history.Events.OfType<TopUp>().Where(one => one.At >= points[0].At && one.At <= asOf).ToList();
        if (topUps.Count == 0)
        {
            return new TopUpCorrection(series, TopUpOutcome.NoTopUp, []);
        }

        if (!series.Measurand.AddsUp)
        {
            return new TopUpCorrection(series, TopUpOutcome.DoesNotAddUp, topUps);
        }

        var charge = history.Machine.ChargeVolume;
        if (
            topUps
                .GroupBy(one => points.Count(point => point.At <= one.At))
                .Any(between => RenewsCharge(between, charge))
        )
        {
            return new TopUpCorrection(series, TopUpOutcome.RenewsCharge, topUps);
        }

        var newOil = history.Machine.Oil.NewReadings.TryGetValue(series.Measurand, out var value) ? value : default;
        if (!history.Machine.Oil.NewReadings.ContainsKey(series.Measurand) || newOil.IsCensored)
        {
            return new TopUpCorrection(series, TopUpOutcome.NewOilValueMissing, topUps);
        }

        var corrected = new SeriesPoint[points.Length];
        var lowest = series.Measurand.LowestPlausible;
        var bounded = new List<SeriesPoint>();
        var drop = 0.0;
        for (var i = points.Length - 1; i >= 0; i--)
        {
            drop += Drop(points, i, topUps, charge, newOil.Value);
            var figure = points[i].Reading.Value - drop;
            corrected[i] = figure < lowest ? points[i].AtMost(lowest) : points[i].WithValue(figure);
            if (figure < lowest)
            {
                bounded.Insert(0, corrected[i]);
            }
        }

        return new TopUpCorrection(series.WithPoints(corrected), TopUpOutcome.Corrected, topUps, drop, bounded);
    }

    private static bool RenewsCharge(IEnumerable<TopUp> between, Volume charge) =>
        !(between.Aggregate(1.0, (left, one) => left * Math.Max(0, 1 - one.Volume / charge)) >= LeastShareLeft);

    /// <summary>What the top-ups between a reading and the next one (or now) took off.</summary>
    private static double Drop(SeriesPoint[] points, int index, List<TopUp> topUps, Volume charge, double newOil)
    {
        var from = points[index];
        var to = index + 1 < points.Length ? points[index + 1] : null;
        var start = from.Reading.Value;

        // Each drop is an affine function of the unknown rate R: drop = constant + factor R. Sums of both are carried along.
        var constant = 0.0;
        var factor = 0.0;
        foreach (var topUp in topUps.Where(one => one.At >= from.At && (to is null || one.At < to.At)))
        {
            var part = topUp.Volume / charge;
            var elapsed = to is null ? 0 : (topUp.At - from.At).TotalSeconds / (to.At - from.At).TotalSeconds;
            var ownConstant = part * (start - constant - newOil);
            var ownFactor = part * (elapsed - factor);
            constant += ownConstant;
            factor += ownFactor;
        }

        var rate = to is null ? 0 : (to.Reading.Value - start + constant) / (1 - factor);
        return constant + factor * rate;
    }
}

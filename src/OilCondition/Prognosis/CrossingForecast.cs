using OilCondition.Statistics;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Prognosis;

/// <summary>When a limit is crossed: any quantile, and the chance by any date.</summary>
public sealed class CrossingForecast
{
    private readonly CrossingLaw law;
    private readonly double intactDays;
    private readonly double begun;

    internal CrossingForecast(CrossingLaw law, DateTimeOffset lastReadingAt, DateTimeOffset asOf)
    {
        this.law = law;
        LastReadingAt = lastReadingAt;
        AsOf = asOf;
        intactDays = Math.Max(0, (asOf - lastReadingAt).TotalDays);
        begun = law.ChanceBefore(intactDays);
    }

    /// <summary>When the last reading was taken, from which the state goes on.</summary>
    public DateTimeOffset LastReadingAt { get; }

    /// <summary>Now.</summary>
    public DateTimeOffset AsOf { get; }

    /// <summary>Whether the limit is rather crossed by now, unseen since the last reading, than not (ours): dates that take it as not crossed would mislead.</summary>
    internal bool IsLikelyPassed => begun >= 0.5;

    /// <summary>The chance that the limit has been crossed by a moment, given that it is not crossed now.</summary>
    /// <param name="at">The moment.</param>
    /// <returns>0 to 1; 0 up to now.</returns>
    public double ChanceBefore(DateTimeOffset at) => law.ChanceBefore(DaysTo(at), intactDays, begun);

    /// <summary>The same within some days from now on; where the limit is rather crossed by now than not, the chance since the last reading.</summary>
    internal double ChanceWithin(double days) =>
        IsLikelyPassed ? law.ChanceBefore(intactDays + days) : law.ChanceBefore(intactDays + days, intactDays, begun);

    /// <summary>The chance that the limit has been crossed by a moment, unseen since the last reading.</summary>
    /// <param name="at">The moment.</param>
    /// <returns>0 to 1; 0 up to the last reading.</returns>
    public double ChanceUnseenBefore(DateTimeOffset at) => law.ChanceBefore(DaysTo(at));

    /// <summary>The moment by which the limit has been crossed with a chance, given that it is not crossed now.</summary>
    /// <param name="chance">The chance, above 0 and below 1.</param>
    /// <param name="at">The moment, or now where there is none.</param>
    /// <returns>Whether the chance is reached within <see cref="LifeForecast.HorizonYears"/> years.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The chance is not between 0 and 1.</exception>
    public bool TryAt(double chance, out DateTimeOffset at)
    {
        var found =
            law.TryTime(chance, intactDays, begun, out var days) && days - intactDays <= LifeForecast.HorizonDays;
        at = AsOf.AddDays(found ? Math.Max(0, days - intactDays) : 0);
        return found;
    }

    /// <summary>The moments of ascending chances, as many as are reached within the horizon.</summary>
    internal DateTimeOffset[] Quantiles(params ReadOnlySpan<double> chances)
    {
        var quantiles = new List<DateTimeOffset>(chances.Length);
        foreach (var chance in chances)
        {
            if (!TryAt(chance, out var at))
            {
                break;
            }

            quantiles.Add(at);
        }

        return [.. quantiles];
    }

    /// <summary>The same machine if it aged faster or slower from now on, as another oil temperature would make it.</summary>
    /// <param name="acceleration">Ageing rate over that of the past, such as <see cref="ThermalAgeing.Acceleration"/>; above 0.</param>
    /// <returns>The forecast with the time from now on divided by the acceleration.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The acceleration is not a finite number above 0.</exception>
    public CrossingForecast WithAgeing(Ratio acceleration) =>
        new(
            law.Aged(intactDays, Guard.Positive(acceleration.DecimalFractions, "", nameof(acceleration))),
            LastReadingAt,
            AsOf
        );

    private double DaysTo(DateTimeOffset at) => Math.Max(0, (at - LastReadingAt).TotalDays);

    /// <summary>The dates of 10, 50 and 90 % chance, as far as there are any.</summary>
    /// <returns>For example <c>10 % by 2026-08-01, 50 % by 2026-10-12, 90 % by 2027-03-01</c>.</returns>
    public override string ToString() =>
        Quantiles(0.1, 0.5, 0.9) switch
        {
            [] => $"not within {LifeForecast.HorizonYears} years",
            [var p10] => $"10 % by {PlainText.Date(p10)}, no upper bound",
            [var p10, var p50] => $"10 % by {PlainText.Date(p10)}, 50 % by {PlainText.Date(p50)}, no upper bound",
            [var p10, var p50, var p90, ..] =>
                $"10 % by {PlainText.Date(p10)}, 50 % by {PlainText.Date(p50)}, 90 % by {PlainText.Date(p90)}",
        };
}

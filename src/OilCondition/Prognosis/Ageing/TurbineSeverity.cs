using OilCondition.Statistics;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Prognosis;

/// <summary>How hard a turbine is on its oil: oxidation resistance lost per year, with make-up taken out of the account.</summary>
/// <remarks>
/// dX/dt = −B + M (100 − X)/100 with X the remaining oxidation resistance in % of new oil, M the make-up in % of the charge per year, B the severity in % per year. Solved from X = 100 at
/// t = 0: B = M (1 − X/100)/(1 − exp(−M t)), M as a fraction inside the exponential; (100 − X)/t without make-up. In the long run X
/// approaches 100 (1 − B/M); below 0 means that make-up alone cannot hold the oil.
/// Source: Den Herder and Vienna 1981, in ASTM D4378 (from memory, not seen; checked as the solution of that equation).
/// </remarks>
internal sealed class TurbineSeverity
{
    private TurbineSeverity(double percentPerYear, double makeUpPercentPerYear)
    {
        PercentPerYear = percentPerYear;
        MakeUpPercentPerYear = makeUpPercentPerYear;
    }

    /// <summary>Severity, B, in % of the oxidation resistance of new oil per year.</summary>
    public double PercentPerYear { get; }

    /// <summary>Make-up, M, in % of the charge per year.</summary>
    public double MakeUpPercentPerYear { get; }

    /// <summary>Whether there is make-up, and with it a long-run level.</summary>
    public bool HasLongRunLevel => MakeUpPercentPerYear > 0;

    /// <summary>Finds the severity from one reading.</summary>
    /// <param name="remaining">Remaining oxidation resistance over that of new oil, 0 to 100 %.</param>
    /// <param name="age">Time since the charge was new, above 0; a year is 365.25 days.</param>
    /// <param name="makeUpPercentPerYear">Make-up in % of the charge per year, 0 or more.</param>
    /// <returns>The severity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure is outside its range.</exception>
    public static TurbineSeverity FromReading(Ratio remaining, TimeSpan age, double makeUpPercentPerYear)
    {
        var lost = 100 - Guard.InRange(remaining.Percent, 0, 100, "%", nameof(remaining));
        var years = Guard.Positive(age.TotalDays, "d", nameof(age)) / 365.25;
        var turned = Guard.NotNegative(makeUpPercentPerYear, "%/a") / 100 * years;
        return new TurbineSeverity(lost / years * OverOneMinusExponential(turned), makeUpPercentPerYear);
    }

    /// <summary>Level that the oxidation resistance approaches, 100 (1 − B/M); below 0 when make-up alone cannot hold it.</summary>
    /// <returns>The level, over that of new oil.</returns>
    /// <exception cref="InvalidOperationException">There is no make-up.</exception>
    public Ratio LongRunLevel() =>
        HasLongRunLevel
            ? Ratio.FromPercent(100 * (1 - PercentPerYear / MakeUpPercentPerYear))
            : throw new InvalidOperationException("Without make-up there is no long-run level.");

    /// <summary>When a new charge falls to a level at this severity.</summary>
    /// <param name="level">The level, over that of new oil; 0 to 100 %.</param>
    /// <returns>Years from new, or that it is never reached.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The level is outside its range.</exception>
    public Arrival<double> YearsTo(Ratio level)
    {
        var percent = Guard.InRange(level.Percent, 0, 100, "%", nameof(level));
        if (HasLongRunLevel)
        {
            return new FirstOrderCourse(100, LongRunLevel().Percent, MakeUpPercentPerYear / 100).TimeTo(percent);
        }

        if (percent >= 100)
        {
            return new Arrival<double>.Already(0);
        }

        return PercentPerYear > 0
            ? new Arrival<double>.Expected((100 - percent) / PercentPerYear)
            : new Arrival<double>.Never();
    }

    /// <summary>x / (1 − exp(−x)) without loss of digits near 0, where it is 1 + x/2 + x²/12 − x⁴/720.</summary>
    private static double OverOneMinusExponential(double x) =>
        x < 0.01 ? 1 + x / 2 + x * x / 12 - x * x * x * x / 720 : x / (1 - Math.Exp(-x));
}

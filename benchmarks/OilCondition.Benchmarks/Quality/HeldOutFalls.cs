using OilCondition.Cleanup;
using UnitsNet;

namespace OilCondition.Benchmarks.Quality;

/// <summary>
/// Invented cleanups of which the truth is known, in time constants of one hour. Never choose a constant of the library on them: they are held out, and
/// their own sizes were fixed once, on the code of the day, and stay.
/// </summary>
public static class HeldOutFalls
{
    public static readonly DateTimeOffset Start = new(2026, 2, 3, 5, 0, 0, TimeSpan.FromHours(1));

    public static double[] Evenly(int count, double span) =>
        [.. Enumerable.Range(0, count).Select(i => span * i / (count - 1))];

    /// <summary>From 640 at the beginning to 35, or as stated.</summary>
    public static double One(double hour, double from = 640, double to = 35) => to + (from - to) * Math.Exp(-hour);

    /// <summary>Half goes at one an hour and half at a fifth of it, down to 35.</summary>
    public static double Two(double hour) => 35 + 310 * Math.Exp(-hour) + 310 * Math.Exp(-0.2 * hour);

    /// <summary>Nothing falls at first.</summary>
    public static double Late(double hour, double dead) => One(Math.Max(0, hour - dead));

    /// <summary>The oil warms from 28 to 62 °C with a time constant of 0.4; the rate rises by 4 % a kelvin.</summary>
    public static double Celsius(double hour) => 62 - 34 * Math.Exp(-hour / 0.4);

    public static double Warming(double hour)
    {
        const int Steps = 400;
        double clock = 0;
        for (var i = 0; i < Steps; i++)
        {
            clock += Math.Exp(0.04 * (Celsius(hour * (i + 0.5) / Steps) - 62)) * hour / Steps;
        }

        return One(clock);
    }

    public static double Reaches(Func<double, double> fall, double target)
    {
        var (from, to) = (0.0, 60.0);
        for (var i = 0; i < 60; i++)
        {
            var middle = (from + to) / 2;
            (from, to) = fall(middle) > target ? (middle, to) : (from, middle);
        }

        return to;
    }

    public static CleanupCurve Fit(
        Random random,
        Func<double, double> fall,
        double[] hours,
        Func<double, double> scatter,
        CleanupOptions? options = null
    ) => CleanupCurve.Fit([.. hours.Select(Start.AddHours)], Values(random, fall, hours, scatter), options);

    public static CleanupCurve FitWarm(
        Random random,
        Func<double, double> fall,
        double[] hours,
        Func<double, double> scatter
    ) =>
        CleanupCurve.Fit(
            [.. hours.Select(Start.AddHours)],
            [.. Values(random, fall, hours, scatter).Select(value => new Reading(value))],
            [
                .. hours.Select(hour =>
                    (Temperature?)Temperature.FromDegreesCelsius(Celsius(hour) + 0.3 * DecayData.Normal(random))
                ),
            ]
        );

    public static double[] Values(
        Random random,
        Func<double, double> fall,
        double[] hours,
        Func<double, double> scatter
    ) => [.. hours.Select(hour => fall(hour) + scatter(fall(hour)) * DecayData.Normal(random))];
}

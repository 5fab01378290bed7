namespace OilCondition.Benchmarks.Quality;

/// <summary>
/// Invented turbines of which nothing is wrong, sampled monthly, and one slow ageing. Levels and scatters are plausible, from memory. Held out
/// as <see cref="HeldOutProcesses"/>: never choose a constant of the library on them.
/// </summary>
public static class HealthyMachines
{
    private const double Correlation = 0.2;

    /// <summary>Machines differ in level, by a standard deviation of this part of the level.</summary>
    private const double BetweenMachines = 0.15;

    // Level, scatter of one machine (of ln in the second group), decimals of the report.
    private static readonly (Measurand Measurand, double New, double Level, double Scatter, int Decimals)[] Even =
    [
        (Measurands.Viscosity40, 46, 46.2, 0.25, 1),
        (Measurands.AcidNumber, 0.08, 0.09, 0.012, 2),
        (Measurands.Rpvot, 1000, 880, 40, 0),
        (Measurands.Antioxidant, 100, 88, 3, 0),
        (Measurands.FlashPoint, 222, 221, 2.5, 0),
        (Measurands.MembranePatchColour, 2, 12, 1.5, 0),
    ];

    private static readonly (Measurand Measurand, double Level, double Scatter, int Decimals)[] Skewed =
    [
        (Measurands.WaterContent, 60, 0.25, 0),
        (Measurands.Particles4, 500, 0.4, 0),
        (Measurands.Particles6, 130, 0.4, 0),
        (Measurands.Particles14, 14, 0.45, 0),
        (Measurands.Iron, 2, 0.25, 1),
    ];

    /// <summary>The machine with its new-oil readings.</summary>
    public static Machine Machine { get; } =
        MonthlyRecords.Of(
            new Oil("invented turbine oil", Even.ToDictionary(one => one.Measurand, one => new Reading(one.New)))
        );

    public static OilHistory Healthy(Random random, int months)
    {
        var columns = new List<(Measurand, double[])>();
        foreach (var (measurand, _, level, scatter, decimals) in Even)
        {
            columns.Add((measurand, Reported(Scattered(random, months), one => level + scatter * one, decimals)));
        }

        foreach (var (measurand, level, scatter, decimals) in Skewed)
        {
            var own = level * Math.Exp(BetweenMachines * DecayData.Normal(random));
            columns.Add(
                (measurand, Reported(Scattered(random, months), one => own * Math.Exp(scatter * one), decimals))
            );
        }

        return MonthlyRecords.History(Machine, columns);
    }

    /// <summary>One measurand that rises by so much a year, whatever the others do.</summary>
    public static OilHistory Ageing(
        Random random,
        Measurand measurand,
        double from,
        double perYear,
        double scatter,
        int decimals,
        int months
    )
    {
        var values = HeldOutProcesses.Added(
            HeldOutProcesses.White(random, months),
            month => from + perYear * month / 12,
            scatter
        );
        return MonthlyRecords.History(
            Machine,
            [(measurand, [.. values.Select(value => Math.Round(Math.Max(0, value), decimals))])]
        );
    }

    private static double[] Scattered(Random random, int months) =>
        HeldOutProcesses.Correlated(random, months, Correlation);

    private static double[] Reported(double[] scattered, Func<double, double> value, int decimals) =>
        [.. scattered.Select(one => Math.Round(value(one), decimals))];
}

using System.Globalization;

namespace OilCondition.Benchmarks.Quality;

/// <summary>
/// Damage that others measured; see tests/Reference/SOURCES.md. Held out: never choose a constant of the library on them.
/// </summary>
public static class PublishedPaths
{
    /// <summary>
    /// Crack lengths of 21 test units in inches (Lu and Meeker 1993, Technometrics 35(2), table 1); a reading every 10 000 cycles is taken to be one a month.
    /// </summary>
    public static IReadOnlyList<double[]> Cracks() => Read("fatigue-crack-paths.csv");

    /// <summary>
    /// Rise of the operating current of 15 lasers in % (Meeker and Escobar 1998, p. 339); a reading every 250 h is taken to be one a month.
    /// </summary>
    public static IReadOnlyList<double[]> Lasers() => Read("laser-current-paths.csv");

    private static double[][] Read(string file) =>
        [
            .. File.ReadLines(Path.Combine(AppContext.BaseDirectory, file))
                .Skip(1)
                .Select(line => line.Split(','))
                .GroupBy(cells => cells[0], cells => double.Parse(cells[2], CultureInfo.InvariantCulture))
                .Select(unit => unit.ToArray()),
        ];

    /// <summary>The month in which a figure is reached, interpolated between two readings; null where it was not.</summary>
    public static double? Crossing(double[] path, double figure)
    {
        var after = Array.FindIndex(path, value => value >= figure);
        return after < 1 ? null : after - (path[after] - figure) / (path[after] - path[after - 1]);
    }
}

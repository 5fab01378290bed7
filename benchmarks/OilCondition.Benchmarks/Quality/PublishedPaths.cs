using System.Globalization;

namespace OilCondition.Benchmarks.Quality;

/// <summary>
/// Crack lengths of 21 test units (Lu and Meeker 1993, Technometrics 35(2), table 1; see tests/Reference/SOURCES.md). Held out: never choose a
/// constant of the library on them.
/// </summary>
public static class PublishedPaths
{
    /// <summary>The readings of each unit; a reading every 10 000 cycles is taken to be one a month.</summary>
    public static IReadOnlyList<double[]> Cracks() =>
        [
            .. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "fatigue-crack-paths.csv"))
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

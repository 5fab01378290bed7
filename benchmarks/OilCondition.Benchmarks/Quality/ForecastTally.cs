using System.Globalization;
using OilCondition.Prognosis;

namespace OilCondition.Benchmarks.Quality;

/// <summary>How often the nominal 90 % interval of remaining life holds the true crossing, how often it came before its early end, how wide it is.</summary>
public sealed class ForecastTally
{
    private readonly List<double> widthDays = [];

    public int Asked { get; private set; }

    public int Held { get; private set; }

    public int Early { get; private set; }

    /// <summary>Coverage and early misses, for the table.</summary>
    public string Shares => $"{ScoreRow.Percent(Held, Asked)} held, {ScoreRow.Percent(Early, Asked)} crossed before";

    public void Add(RemainingLife.Forecast life, DateTimeOffset crossing)
    {
        var chance = life.Crossing.ChanceBefore(crossing);
        Asked++;
        Early += chance < 0.05 ? 1 : 0;
        Held += chance is >= 0.05 and <= 0.95 ? 1 : 0;
        widthDays.Add(
            life.Crossing.TryAt(0.05, out var from) && life.Crossing.TryAt(0.95, out var to)
                ? (to - from).TotalDays
                : double.PositiveInfinity
        );
    }

    /// <summary>Median width from 5 to 95 % in spans of the readings, in words.</summary>
    public string MedianWidth(double spanDays)
    {
        widthDays.Sort();
        var median = widthDays[widthDays.Count / 2] / spanDays;
        return double.IsPositiveInfinity(median)
            ? "without an upper end"
            : median.ToString("F2", CultureInfo.InvariantCulture) + " spans";
    }
}

using System.Globalization;

namespace OilCondition.Benchmarks.Quality;

/// <summary>One line of the scorecard. What must be ends with what was measured when the scorecard was made, in the same order.</summary>
public sealed record ScoreRow(string Plant, string Measured, string MustBe, int Runs)
{
    public static string Percent(int number, int of) => of == 0 ? "-" : Percent((double)number / of);

    public static string Percent(double part) => string.Create(CultureInfo.InvariantCulture, $"{100 * part:0.#} %");
}

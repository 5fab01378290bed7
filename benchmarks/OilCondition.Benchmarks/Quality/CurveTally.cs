using System.Globalization;

namespace OilCondition.Benchmarks.Quality;

/// <summary>Counts what runs of one kind answer, in per cent.</summary>
public sealed class CurveTally
{
    private int runs;
    private int never;
    private int warned;
    private int late;
    private int lateUnwarned;
    private int early;
    private int asked;

    public string Never => Percent(never, runs);

    public string Warned => Percent(warned, runs);

    public string Late => Percent(late, runs);

    public string LateUnwarned => Percent(lateUnwarned, runs);

    /// <summary>Of the answers that name a moment, those whose ends hold the truth; an end that is open holds it.</summary>
    public string Held => Percent(asked - late - early, asked);

    public void Add(Arrival<DateTimeOffset> answer, DateTimeOffset truth, bool isWarned)
    {
        runs++;
        warned += isWarned ? 1 : 0;
        switch (answer)
        {
            case Arrival<DateTimeOffset>.Never:
                never++;
                break;
            case Arrival<DateTimeOffset>.Expected it:
                asked++;
                early += truth < it.Earliest ? 1 : 0;
                late += truth > it.Latest ? 1 : 0;
                lateUnwarned += truth > it.Latest && !isWarned ? 1 : 0;
                break;
            case Arrival<DateTimeOffset>.NotBefore it:
                asked++;
                early += truth < it.Earliest ? 1 : 0;
                break;
        }
    }

    private static string Percent(int number, int of) =>
        of == 0 ? "-" : (100.0 * number / of).ToString("0.#", CultureInfo.InvariantCulture);
}

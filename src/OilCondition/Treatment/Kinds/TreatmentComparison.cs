using System.Globalization;
using System.Text;
using OilCondition.Text;

namespace OilCondition.Treatment;

/// <summary>All treatments for one task, side by side: those that meet the target first, the quickest on top, then those that are ruled out.</summary>
/// <example>
/// <code>
/// var table = TreatmentComparison.Of(job, new SettlingAndDraining(Length.FromMeters(1), Length.FromMicrometers(100)),
///     new VacuumDehydration(unit), new FineFiltration(loop, filter, 1));
/// Console.WriteLine(table);
/// </code>
/// </example>
public sealed class TreatmentComparison
{
    private TreatmentComparison(TreatmentJob job, IReadOnlyList<TreatmentAssessment> rows)
    {
        Job = job;
        Rows = rows;
    }

    /// <summary>The task.</summary>
    public TreatmentJob Job { get; }

    /// <summary>The rows.</summary>
    public IReadOnlyList<TreatmentAssessment> Rows { get; }

    /// <summary>Compares treatments, the library's or your own.</summary>
    /// <param name="job">The task.</param>
    /// <param name="treatments">The treatments, each with its own equipment.</param>
    /// <returns>The comparison.</returns>
    /// <exception cref="ArgumentNullException">The task or a treatment is null.</exception>
    public static TreatmentComparison Of(TreatmentJob job, params ITreatment[] treatments)
    {
        Guard.NotNull(job);
        return new TreatmentComparison(
            job,
            [
                .. Guard
                    .NotNull(treatments, nameof(treatments))
                    .Select(treatment => Guard.NotNull(treatment, nameof(treatments)).Assess(job))
                    .OrderByDescending(row => row.MeetsTarget)
                    .ThenBy(row => row.MeetsTarget ? row.RunTime.TotalHours : 0),
            ]
        );
    }

    /// <summary>The comparison as a table in plain text, for a console or a note.</summary>
    /// <returns>One line a treatment, invariant culture.</returns>
    public override string ToString()
    {
        var text = new StringBuilder();
        Line(
            text,
            "treatment",
            "water",
            "particles",
            "floor mg/kg",
            "hours",
            "kWh",
            "water L",
            "elements",
            "new oil L"
        );
        foreach (var row in Rows)
        {
            Line(
                text,
                row.Treatment.Name,
                PlainText.Spaced(row.Water.Outcome),
                PlainText.Spaced(row.Particles.Outcome),
                Number(row.WaterFloor.PartsPerMillion),
                IfMet(row, Number(row.RunTime.TotalHours)),
                IfMet(row, Number((row.Heat + row.Electricity).KilowattHours)),
                IfMet(row, Number(row.WaterRemoved.Liters)),
                IfMet(row, row.Elements.ToString(CultureInfo.InvariantCulture)),
                IfMet(row, Number(row.NewOil.Liters))
            );
        }

        return text.ToString();
    }

    /// <summary>What is ruled out has no hours and no bill: a 0 would read as 'at once, for nothing'.</summary>
    private static string IfMet(TreatmentAssessment row, string cell) => row.MeetsTarget ? cell : "-";

    private static string Number(double value) => PlainText.Tenths(value);

    private static void Line(StringBuilder text, params string[] cells)
    {
        int[] widths = [26, 28, 28, 12, 8, 8, 8, 9, 10];
        for (var i = 0; i < cells.Length; i++)
        {
            text.Append(i < 3 ? cells[i].PadRight(widths[i]) : cells[i].PadLeft(widths[i]));
        }

        text.Append('\n');
    }
}

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
    /// <summary>Widths of the columns: 99 characters, so that a table fits a console, a mail and a page.</summary>
    private static readonly int[] Widths = [22, 20, 20, 11, 8, 7];

    private TreatmentComparison(TreatmentJob job, IReadOnlyList<TreatmentAssessment> rows)
    {
        Job = job;
        Rows = rows;
    }

    /// <summary>The task.</summary>
    public TreatmentJob Job { get; }

    /// <summary>The rows.</summary>
    public IReadOnlyList<TreatmentAssessment> Rows { get; }

    /// <summary>Compares treatments, the library's or your own, with the usual errors of the inputs.</summary>
    /// <param name="job">The task.</param>
    /// <param name="treatments">The treatments, each with its own equipment.</param>
    /// <returns>The comparison.</returns>
    /// <exception cref="ArgumentNullException">The task or a treatment is null.</exception>
    public static TreatmentComparison Of(TreatmentJob job, params ITreatment[] treatments) =>
        Of(job, InputErrors.Usual, treatments);

    /// <summary>Compares treatments, with what their inputs may be out by.</summary>
    /// <param name="job">The task.</param>
    /// <param name="errors">The errors of the inputs.</param>
    /// <param name="treatments">The treatments, each with its own equipment.</param>
    /// <returns>The comparison.</returns>
    /// <exception cref="ArgumentNullException">The task, the errors or a treatment is null.</exception>
    public static TreatmentComparison Of(TreatmentJob job, InputErrors errors, params ITreatment[] treatments)
    {
        Guard.NotNull(job);
        Guard.NotNull(errors);
        return new TreatmentComparison(
            job,
            [
                .. Guard
                    .NotNull(treatments)
                    .Select(treatment => Guard.NotNull(treatment, nameof(treatments)).Assess(job).WithBand(job, errors))
                    .OrderByDescending(row => row.MeetsTarget)
                    .ThenBy(row => row.MeetsTarget ? row.RunTime : TimeSpan.Zero),
            ]
        );
    }

    /// <summary>The comparison as a table in plain text, for a console or a note.</summary>
    /// <returns>One line a treatment of 99 characters, invariant culture.</returns>
    public override string ToString()
    {
        var text = new StringBuilder();
        Line(text, "treatment", "water", "particles", "floor mg/kg", "hours", "kWh", "uses");
        foreach (var row in Rows)
        {
            Line(
                text,
                row.Treatment.Name,
                row.WaterPart.ToString(),
                row.ParticlePart.ToString(),
                PlainText.Number(row.WaterFloor.PartsPerMillion),
                IfMet(row, PlainText.Number(row.RunTime?.TotalHours ?? 0)),
                IfMet(row, PlainText.Number((row.Heat + row.Electricity).KilowattHours)),
                IfMet(row, Uses(row))
            );
        }

        return text.ToString();
    }

    /// <summary>What is ruled out has no hours and no bill: a 0 would read as 'at once, for nothing'.</summary>
    private static string IfMet(TreatmentAssessment row, string cell) => row.MeetsTarget ? cell : "-";

    private static string Uses(TreatmentAssessment row) =>
        row.NewOil.CubicMeters >= 10 ? $"{PlainText.Number(row.NewOil.CubicMeters)} m³ oil"
        : row.NewOil.Liters > 0 ? $"{PlainText.Number(row.NewOil.Liters)} L oil"
        : row.Elements > 0 ? $"{row.Elements.ToString(CultureInfo.InvariantCulture)} el."
        : "-";

    private static void Line(StringBuilder text, params string[] cells)
    {
        for (var i = 0; i < Widths.Length; i++)
        {
            var cell = cells[i].Length < Widths[i] || i > 2 ? cells[i] : cells[i].Remove(Widths[i] - 2) + "…";
            text.Append(i < 3 ? cell.PadRight(Widths[i]) : cell.PadLeft(Widths[i]));
        }

        text.Append(cells[Widths.Length].PadLeft(11)).Append('\n');
    }
}

using OilCondition.Text;

namespace OilCondition.DataFrames;

/// <summary>Makes readings of the cells of a frame, by the same rules for long and wide ones.</summary>
internal static class ReadingCell
{
    /// <summary>A reading; null with a problem where the cells give none.</summary>
    public static Reading? Of(
        FrameInput input,
        long row,
        Measurand measurand,
        double value,
        string? sign,
        string? method,
        (string Value, string Qualifier) columns,
        List<FrameProblem> problems
    )
    {
        if (!QualifierSign.TryRead(sign, out var qualifier))
        {
            problems.Add(
                new FrameProblem(row, columns.Qualifier, sign!, $"no qualifier; allowed: {QualifierSign.Allowed}.")
            );
            return null;
        }

        if (!Guard.IsFinite(value) || !measurand.IsPlausible(value))
        {
            problems.Add(
                new FrameProblem(
                    row,
                    columns.Value,
                    input.Cell(row, columns.Value),
                    FormattableString
                        .Invariant(
                            $"{measurand.Name} is {value:G7} {measurand.Unit}; allowed: {measurand.LowestPlausible:G7} to {measurand.HighestPlausible:G7} {measurand.Unit}"
                        )
                        .TrimEnd()
                )
            );
            return null;
        }

        return new Reading(value, qualifier, method ?? "");
    }
}

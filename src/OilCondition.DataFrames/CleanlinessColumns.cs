using Microsoft.Data.Analysis;
using OilCondition.Cleanliness;

namespace OilCondition.DataFrames;

/// <summary>Cleanliness codes after ISO 4406 by the column.</summary>
/// <example>
/// <code>
/// wide = wide.With(CleanlinessColumns.Codes(wide.ValuesOf(Measurands.Particles4), wide.ValuesOf(Measurands.Particles6), wide.ValuesOf(Measurands.Particles14)));
/// </code>
/// </example>
public static class CleanlinessColumns
{
    /// <summary>
    /// The code of each row and its three scale numbers: <c>code</c>, <c>scale4</c>, <c>scale6</c>, <c>scale14</c>, <c>codeReason</c>. A scale number of 29 is
    /// 'above the table', and the code then has <c>&gt;28</c>. Counts that rise with size give null and a reason.
    /// </summary>
    /// <param name="countsAt4">Particles of at least 4 µm(c) per mL, 0 or more.</param>
    /// <param name="countsAt6">Particles of at least 6 µm(c) per mL; same length.</param>
    /// <param name="countsAt14">Particles of at least 14 µm(c) per mL; same length.</param>
    /// <returns>A frame of the same length.</returns>
    /// <exception cref="ArgumentException">The columns differ in length or hold no numbers: all faults are named.</exception>
    public static DataFrame Codes(DataFrameColumn countsAt4, DataFrameColumn countsAt6, DataFrameColumn countsAt14)
    {
        static ColumnInput Counts(DataFrameColumn column, Measurand measurand) =>
            new(column, measurand.Name, measurand.Unit, 0, double.MaxValue);
        var rows = ColumnRows.Of(
            Counts(countsAt4, Measurands.Particles4),
            Counts(countsAt6, Measurands.Particles6),
            Counts(countsAt14, Measurands.Particles14)
        );
        var (at4, at6, at14) = (new int[rows.Length], new int[rows.Length], new int[rows.Length]);
        var codes = new string?[rows.Length];
        var known = new Dictionary<(int, int, int), string>();
        for (var i = 0; i < rows.Length; i++)
        {
            at4[i] = Iso4406.ScaleNumber(rows.Values(0)[i]);
            at6[i] = Iso4406.ScaleNumber(rows.Values(1)[i]);
            at14[i] = Iso4406.ScaleNumber(rows.Values(2)[i]);
            if (at4[i] < at6[i] || at6[i] < at14[i])
            {
                rows.Drop(i, "the counts rise with size, which cumulative counts cannot");
                continue;
            }

            // A fleet has few codes: each is made once.
            var numbers = (at4[i], at6[i], at14[i]);
            if (!known.TryGetValue(numbers, out codes[i]))
            {
                known.Add(numbers, codes[i] = new CleanlinessCode(at4[i], at6[i], at14[i]).ToString());
            }
        }

        return new DataFrame(
            rows.Texts("code", codes),
            rows.Wholes("scale4", at4),
            rows.Wholes("scale6", at6),
            rows.Wholes("scale14", at14),
            rows.Reasons("codeReason")
        );
    }
}

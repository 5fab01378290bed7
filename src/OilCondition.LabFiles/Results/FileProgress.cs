using System.Globalization;

namespace OilCondition.LabFiles;

/// <summary>How far the reading of a file has come.</summary>
public readonly record struct FileProgress
{
    internal FileProgress(long rowCount, double? fraction)
    {
        RowCount = rowCount;
        Fraction = fraction;
    }

    /// <summary>Rows read so far, blank ones and headers left out.</summary>
    public long RowCount { get; }

    /// <summary>Part of the file that has been read, 0 to 1; null where nobody knows its length.</summary>
    public double? Fraction { get; }

    /// <summary>Rows and part.</summary>
    /// <returns>For example <c>20000 rows, 35 %</c>.</returns>
    public override string ToString() =>
        string.Format(
            CultureInfo.InvariantCulture,
            Fraction is null ? "{0} rows" : "{0} rows, {1:0} %",
            RowCount,
            100 * Fraction
        );
}

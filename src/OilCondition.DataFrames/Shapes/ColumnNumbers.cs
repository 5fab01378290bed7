using Microsoft.Data.Analysis;

namespace OilCondition.DataFrames;

/// <summary>The numbers of a column, whatever type of number that holds them in full it is of.</summary>
internal static class ColumnNumbers
{
    /// <summary>A reader of its cells; null, with what is wrong, where it is of no such type.</summary>
    public static Func<long, double?>? Of(DataFrameColumn column, out string fault)
    {
        fault = "";
        switch (column)
        {
            case PrimitiveDataFrameColumn<double> numbers:
                return row => numbers[row];
            case PrimitiveDataFrameColumn<int> numbers:
                return row => numbers[row];
            case PrimitiveDataFrameColumn<long> numbers:
                return row => numbers[row];
            case PrimitiveDataFrameColumn<short> numbers:
                return row => numbers[row];
            case PrimitiveDataFrameColumn<byte> numbers:
                return row => numbers[row];
            case PrimitiveDataFrameColumn<decimal> numbers:
                return row => (double?)numbers[row];
            default:
                if (column.NullCount == column.Length)
                {
                    return static _ => null;
                }

                fault =
                    column is PrimitiveDataFrameColumn<float>
                        ? $"column '{column.Name}' is Single, which keeps seven digits and no decimal as written; load it as Double (dataTypes of LoadCsv)."
                    : column.DataType == typeof(string)
                        ? $"column '{column.Name}' is String; numbers in texts are read by ToTableSheet and LabFile. Allowed: Double, Decimal or whole numbers."
                    : $"column '{column.Name}' is {column.DataType.Name}; allowed: Double, Decimal or whole numbers.";
                return null;
        }
    }
}

using Microsoft.Data.Analysis;
using OilCondition.Text;

namespace OilCondition.DataFrames;

/// <summary>
/// The rows of several columns in which each has a number that is believed, close together as bulk methods take them, and the way back to
/// columns of the full length: null where an input is null, null with a reason where a number is not believed.
/// </summary>
internal sealed class ColumnRows
{
    private readonly int count;
    private readonly int[] rows;
    private readonly double[][] values;
    private readonly bool[] isDropped;
    private string?[]? reasons;

    private ColumnRows(ColumnInput[] inputs, Func<long, double?>[] cells, int count)
    {
        this.count = count;
        var kept = new List<int>(count);
        values = [.. inputs.Select(_ => new double[count])];
        Span<double> numbers = stackalloc double[inputs.Length];
        for (var row = 0; row < count; row++)
        {
            if (TryRead(row, inputs, cells, numbers))
            {
                for (var i = 0; i < inputs.Length; i++)
                {
                    values[i][kept.Count] = numbers[i];
                }

                kept.Add(row);
            }
        }

        rows = [.. kept];
        isDropped = new bool[rows.Length];
    }

    /// <summary>How many rows have a number in each column.</summary>
    public int Length => rows.Length;

    /// <exception cref="ArgumentException">Columns differ in length, or hold no numbers: all of them are named.</exception>
    public static ColumnRows Of(params ColumnInput[] inputs)
    {
        var faults = new List<string>();
        var cells = new Func<long, double?>[inputs.Length];
        for (var i = 0; i < inputs.Length; i++)
        {
            var column = Guard.NotNull(inputs[i].Column, inputs[i].Name);
            cells[i] = ColumnNumbers.Of(column, out var fault)!;
            if (cells[i] is null)
            {
                faults.Add(fault);
            }

            if (column.Length != inputs[0].Column.Length)
            {
                faults.Add(
                    FormattableString.Invariant(
                        $"column '{column.Name}' has {column.Length} rows, '{inputs[0].Column.Name}' has {inputs[0].Column.Length}; both must have the same length."
                    )
                );
            }
        }

        return faults.Count > 0
            ? throw new ArgumentException(string.Join(" ", faults), nameof(inputs))
            : new ColumnRows(inputs, cells, (int)inputs[0].Column.Length);
    }

    public ReadOnlySpan<double> Values(int input) => values[input].AsSpan(0, Length);

    public double[] NewColumn() => new double[Length];

    /// <summary>Says something of a row that keeps its values.</summary>
    public void Note(int index, string reason) => Say(rows[index], reason);

    /// <summary>Takes the values of a row away, and says why.</summary>
    public void Drop(int index, string reason)
    {
        isDropped[index] = true;
        Say(rows[index], reason);
    }

    /// <summary>A row outside the range of a model: without its values, or with them and a word that they are extrapolated.</summary>
    public void Outside(int index, string reason, bool extrapolate)
    {
        isDropped[index] |= !extrapolate;
        Say(rows[index], extrapolate ? $"extrapolated: {reason}" : reason);
    }

    public DoubleDataFrameColumn Numbers(string name, double[] results)
    {
        var column = new DoubleDataFrameColumn(name, count);
        Fill(index => column[rows[index]] = results[index]);
        return column;
    }

    public Int32DataFrameColumn Wholes(string name, int[] results)
    {
        var column = new Int32DataFrameColumn(name, count);
        Fill(index => column[rows[index]] = results[index]);
        return column;
    }

    public StringDataFrameColumn Texts(string name, string?[] results)
    {
        var column = new StringDataFrameColumn(name, count);
        Fill(index => column[rows[index]] = results[index]);
        return column;
    }

    public StringDataFrameColumn Reasons(string name) =>
        reasons is null ? new StringDataFrameColumn(name, count) : new StringDataFrameColumn(name, reasons);

    private void Fill(Action<int> fill)
    {
        for (var index = 0; index < rows.Length; index++)
        {
            if (!isDropped[index])
            {
                fill(index);
            }
        }
    }

    private bool TryRead(int row, ColumnInput[] inputs, Func<long, double?>[] cells, Span<double> numbers)
    {
        var isWhole = true;
        for (var i = 0; i < inputs.Length; i++)
        {
            if (cells[i](row) is not { } number)
            {
                isWhole = false;
                continue;
            }

            numbers[i] = number;
            if (!(number >= inputs[i].Lowest && number <= inputs[i].Highest))
            {
                isWhole = false;
                Say(row, OutOfRange(inputs[i], number));
            }
        }

        return isWhole;
    }

    private void Say(int row, string reason)
    {
        reasons ??= new string?[count];
        reasons[row] = reasons[row] is { } before ? $"{before}; {reason}" : reason;
    }

    private static string OutOfRange(ColumnInput input, double number) =>
        FormattableString
            .Invariant(
                $"{input.Name} is {number:G7} {input.Unit}, allowed: {input.Lowest:G7} to {input.Highest:G7} {input.Unit}"
            )
            .TrimEnd();
}

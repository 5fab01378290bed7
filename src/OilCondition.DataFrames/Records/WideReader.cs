using Microsoft.Data.Analysis;

namespace OilCondition.DataFrames;

/// <summary>Makes a record of each row of a wide frame.</summary>
internal sealed class WideReader
{
    private readonly FrameInput input;
    private readonly RecordKeys keys;
    private readonly List<MeasurandCells> measurands = [];
    private readonly List<(string Header, Func<long, string?> Of)> texts = [];
    private readonly List<string> otherColumns = [];
    private readonly List<FrameProblem> problems = [];

    private WideReader(FrameInput input, MeasurandCatalog catalog)
    {
        this.input = input;
        keys = new RecordKeys(input);
        var known = catalog.All.ToDictionary(FrameNames.ValueOf, StringComparer.Ordinal);
        // Signs and methods of values that are not there are columns like any other.
        var beside = input
            .Names.Where(known.ContainsKey)
            .SelectMany(name => new[] { FrameNames.QualifierOf(known[name]), FrameNames.MethodOf(known[name]) })
            .ToHashSet(StringComparer.Ordinal);
        foreach (var name in input.Names.Where(name => !FrameNames.Keys.Contains(name) && !beside.Contains(name)))
        {
            if (known.TryGetValue(name, out var measurand))
            {
                measurands.Add(new MeasurandCells(input, measurand));
            }
            else if (name.StartsWith(FrameNames.TextPrefix, StringComparison.Ordinal))
            {
                texts.Add((name[FrameNames.TextPrefix.Length..], input.Text(name)));
            }
            else if (catalog.TryFind(name.Split(" [")[0], out var meant))
            {
                input.Fault(
                    $"column '{name}' is not in the unit of {meant.Name}; allowed: '{FrameNames.ValueOf(meant)}'."
                );
            }
            else
            {
                otherColumns.Add(name);
            }
        }

        input.ThrowIfFaulty("records");
    }

    public static OilRecords Read(DataFrame frame, MeasurandCatalog catalog)
    {
        var cells = new FrameInput(frame);
        var reader = new WideReader(cells, catalog);
        var records = new List<FrameRecord>(cells.RowCount);
        for (var row = 0; row < cells.RowCount; row++)
        {
            if (reader.keys.TryRead(row, reader.problems, out var key))
            {
                records.Add(key.With(reader.Readings(row), reader.Texts(row)));
            }
        }

        return new OilRecords(records, reader.problems, reader.otherColumns);
    }

    private Dictionary<Measurand, Reading> Readings(long row)
    {
        var readings = new Dictionary<Measurand, Reading>();
        foreach (var cells in measurands)
        {
            if (cells.At(input, row, problems) is { } reading)
            {
                readings.Add(cells.Measurand, reading);
            }
        }

        return readings;
    }

    private Dictionary<string, string> Texts(long row)
    {
        var found = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (header, of) in texts)
        {
            if (of(row) is { } text)
            {
                found.Add(header, text);
            }
        }

        return found;
    }

    /// <summary>The three columns of one measurand.</summary>
    private sealed class MeasurandCells(FrameInput input, Measurand measurand)
    {
        private readonly (string Value, string Qualifier) names = (
            FrameNames.ValueOf(measurand),
            FrameNames.QualifierOf(measurand)
        );
        private readonly Func<long, double?> value = input.Number(FrameNames.ValueOf(measurand));
        private readonly Func<long, string?> qualifier = input.Text(FrameNames.QualifierOf(measurand));
        private readonly Func<long, string?> method = input.Text(FrameNames.MethodOf(measurand));

        public Measurand Measurand { get; } = measurand;

        public Reading? At(FrameInput from, long row, List<FrameProblem> problems) =>
            value(row) is { } number
                ? ReadingCell.Of(from, row, Measurand, number, qualifier(row), method(row), names, problems)
                : null;
    }
}

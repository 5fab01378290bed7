using Microsoft.Data.Analysis;
using OilCondition.Text;

namespace OilCondition.DataFrames;

/// <summary>Puts the rows of a long frame together to records.</summary>
internal sealed class LongReader
{
    private static readonly HashSet<string> Known =
    [
        .. FrameNames.Keys,
        FrameNames.Measurand,
        FrameNames.Value,
        FrameNames.Unit,
        FrameNames.Qualifier,
        FrameNames.Method,
        FrameNames.Header,
        FrameNames.Text,
    ];

    private readonly FrameInput input;
    private readonly MeasurandCatalog catalog;
    private readonly RecordKeys keys;
    private readonly Func<long, string?> measurandId;
    private readonly Func<long, double?> value;
    private readonly Func<long, string?> unit;
    private readonly Func<long, string?> qualifier;
    private readonly Func<long, string?> method;
    private readonly Func<long, string?> header;
    private readonly Func<long, string?> text;
    private readonly List<FrameProblem> problems = [];
    private readonly List<Draft> drafts = [];
    private readonly Dictionary<RecordKey, Draft> latest = [];

    /// <summary>The record of the row before, which is most often that of the next one.</summary>
    private Draft? before;

    private LongReader(FrameInput input, MeasurandCatalog catalog)
    {
        this.input = input;
        this.catalog = catalog;
        keys = new RecordKeys(input);
        measurandId = input.Text(FrameNames.Measurand, isNeeded: true);
        value = input.Number(FrameNames.Value, isNeeded: true);
        unit = input.Text(FrameNames.Unit);
        qualifier = input.Text(FrameNames.Qualifier);
        method = input.Text(FrameNames.Method);
        header = input.Text(FrameNames.Header);
        text = input.Text(FrameNames.Text);
        input.ThrowIfFaulty("readings");
    }

    public static OilRecords Read(DataFrame frame, MeasurandCatalog catalog)
    {
        var cells = new FrameInput(frame);
        var reader = new LongReader(cells, catalog);
        for (var row = 0; row < cells.RowCount; row++)
        {
            reader.Take(row);
        }

        return new OilRecords(
            reader.drafts.ConvertAll(draft => draft.Key.With(draft.Readings, draft.Texts)),
            reader.problems,
            [.. cells.Names.Where(name => !Known.Contains(name))]
        );
    }

    private void Take(long row)
    {
        if (!keys.TryRead(row, problems, out var key))
        {
            return;
        }

        var draft = DraftOf(key);
        // A loader makes empty texts of cells that were null.
        if (header(row) is { } name && (name.Length > 0 || text(row) is { Length: > 0 }))
        {
            draft = draft.HasText(name) ? Another(key) : draft;
            draft.Add(name, text(row) ?? "");
        }

        if (measurandId(row) is { Length: > 0 } id)
        {
            if (TryReading(row, id, out var measurand, out var reading))
            {
                (draft.Readings.ContainsKey(measurand) ? Another(key) : draft).Readings.Add(measurand, reading);
            }
        }
        else if (value(row) is not null)
        {
            problems.Add(
                new FrameProblem(row, FrameNames.Measurand, "", "the value is not taken over; it needs its measurand.")
            );
        }
    }

    private bool TryReading(long row, string id, out Measurand measurand, out Reading reading)
    {
        reading = default;
        if (!catalog.TryFind(id, out var found))
        {
            measurand = null!;
            var near = catalog.Nearest(id) is { } nearest ? $"; did you mean '{nearest}'?" : ".";
            problems.Add(new FrameProblem(row, FrameNames.Measurand, id, $"no known measurand{near}"));
            return false;
        }

        measurand = found;
        if (value(row) is not { } number)
        {
            problems.Add(new FrameProblem(row, FrameNames.Value, "", $"a row of {found.Name} needs a value."));
            return false;
        }

        if (unit(row) is { Length: > 0 } written && !string.Equals(written, found.Unit, StringComparison.Ordinal))
        {
            if (!Guard.IsFinite(number) || !found.TryConvert(number, written, out number))
            {
                problems.Add(
                    new FrameProblem(row, FrameNames.Unit, written, $"no unit of {found.Name}; allowed: {found.Unit}.")
                );
                return false;
            }
        }

        var made = ReadingCell.Of(
            input,
            row,
            found,
            number,
            qualifier(row),
            method(row),
            (FrameNames.Value, FrameNames.Qualifier),
            problems
        );
        reading = made.GetValueOrDefault();
        return made is not null;
    }

    private Draft DraftOf(RecordKey key)
    {
        if (before is { } same && same.Key == key)
        {
            return same;
        }

        return before = latest.TryGetValue(key, out var draft) ? draft : Another(key);
    }

    /// <summary>A new record: the first of its key, or another report where the latest has such a cell already.</summary>
    private Draft Another(RecordKey key)
    {
        var draft = new Draft(key);
        drafts.Add(draft);
        return before = latest[key] = draft;
    }

    private sealed class Draft(RecordKey key)
    {
        private Dictionary<string, string>? texts;

        public RecordKey Key { get; } = key;

        public Dictionary<Measurand, Reading> Readings { get; } = [];

        public IReadOnlyDictionary<string, string> Texts => texts ?? FrameRecord.NoTexts;

        public bool HasText(string header) => texts?.ContainsKey(header) ?? false;

        public void Add(string header, string text) =>
            (texts ??= new Dictionary<string, string>(StringComparer.Ordinal)).Add(header, text);
    }
}

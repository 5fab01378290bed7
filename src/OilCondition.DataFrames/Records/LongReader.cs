using Microsoft.Data.Analysis;
using OilCondition.Text;

namespace OilCondition.DataFrames;

/// <summary>Puts the rows of a long frame together to records.</summary>
internal sealed class LongReader
{
    private static readonly HashSet<string> Known =
    [
        .. RecordKeys.Names,
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
        var input = new FrameInput(frame);
        var reader = new LongReader(input, catalog);
        for (var row = 0; row < input.RowCount; row++)
        {
            reader.Take(row);
        }

        return new OilRecords(
            reader.drafts.ConvertAll(draft => draft.Key.With(draft.Readings, draft.Texts)),
            reader.problems,
            [.. input.Names.Where(name => !Known.Contains(name))]
        );
    }

    private void Take(long row)
    {
        if (!keys.TryRead(row, problems, out var key))
        {
            return;
        }

        if (header(row) is { } name)
        {
            DraftFor(key, draft => draft.Texts.ContainsKey(name)).Texts[name] = text(row) ?? "";
        }

        if (measurandId(row) is { Length: > 0 } id)
        {
            if (TryReading(row, id, out var measurand, out var reading))
            {
                DraftFor(key, draft => draft.Readings.ContainsKey(measurand)).Readings[measurand] = reading;
            }
            else
            {
                DraftFor(key, _ => false);
            }
        }
        else if (value(row) is not null)
        {
            problems.Add(
                new FrameProblem(row, FrameNames.Measurand, "", "the value is not taken over; it needs its measurand.")
            );
        }
        else
        {
            DraftFor(key, _ => false);
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

    /// <summary>The record that a row belongs to: a new one where the latest of its key has such a cell already.</summary>
    private Draft DraftFor(RecordKey key, Predicate<Draft> isTaken)
    {
        if (!latest.TryGetValue(key, out var draft) || isTaken(draft))
        {
            drafts.Add(latest[key] = draft = new Draft(key));
        }

        return draft;
    }

    private sealed class Draft(RecordKey key)
    {
        public RecordKey Key { get; } = key;

        public Dictionary<Measurand, Reading> Readings { get; } = [];

        public Dictionary<string, string> Texts { get; } = new(StringComparer.Ordinal);
    }
}

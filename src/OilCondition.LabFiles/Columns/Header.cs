using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>The header of a file, matched with a column map.</summary>
internal sealed class Header
{
    /// <summary>More names would hide the message.</summary>
    private const int MostNames = 20;

    private Header(ColumnMap map, int line, string[] names, bool isLabFile)
    {
        Line = line;
        LastLine = line;
        var free = new Names(names);
        TakenAt = free.Take(map.TakenAt, ColumnUse.TakenAt);
        TimeOfDay = TakenAt is null ? null : free.Take(map.TimeOfDay, ColumnUse.TimeOfDay);
        Machine = free.Take(map.Machine, ColumnUse.Machine);
        SampleNumber = isLabFile ? free.Take(map.SampleNumber, ColumnUse.SampleNumber) : null;
        TestTemperature = free.Take(map.TestTemperature, ColumnUse.TestTemperature);
        if (TestTemperature is null)
        {
            TestTemperature = free.Take(
                [.. map.TestTemperature.Select(name => name + " C")],
                ColumnUse.TestTemperature
            );
            TestTemperature ??= free.Take(
                [.. map.TestTemperature.Select(name => name + " F")],
                ColumnUse.TestTemperature
            );
        }

        Columns = [.. names.Select((name, i) => free.Taken(i) ?? new ColumnMatch(map.Index).Of(i, name))];
        var missing = new List<string>();
        Require(TakenAt, map.ConstantTakenAt, isLabFile ? "the date of sampling" : "the time", map.TakenAt);
        if (isLabFile)
        {
            Require(Machine, map.ConstantMachine, "the machine", map.Machine);
        }

        Missing = missing;
        SettleViscosities();
        NameTexts();
        Keys = [.. new[] { Machine, SampleNumber, TakenAt, TimeOfDay, TestTemperature }.OfType<Column>()];
        Texts = [.. Columns.Where(column => column.Use == ColumnUse.Text)];

        void Require(Column? column, string constant, string what, IReadOnlyList<string> known)
        {
            if (column is null && constant.Length == 0)
            {
                missing.Add($"{what} (one of: {string.Join(", ", known)})");
            }
        }
    }

    /// <summary>Line where it stands, and its last one: a row of units may follow it.</summary>
    public int Line { get; }

    public int LastLine { get; set; }

    public IReadOnlyList<Column> Columns { get; }

    /// <summary>Columns that say whose record a row is, and when and at which temperature.</summary>
    public IReadOnlyList<Column> Keys { get; }

    public IReadOnlyList<Column> Texts { get; }

    /// <summary>Lines above it, such as the laboratory's name.</summary>
    public IList<string> Titles { get; } = [];

    public Column? Machine { get; }

    public Column? SampleNumber { get; }

    public Column? TakenAt { get; }

    public Column? TimeOfDay { get; }

    public Column? TestTemperature { get; private set; }

    /// <summary>The key columns that neither the header nor a constant of the map gives.</summary>
    public IReadOnlyList<string> Missing { get; }

    /// <summary>How many columns are known: by this the header is told from the lines above it.</summary>
    public int KnownCount => Columns.Count(column => column.Use != ColumnUse.Text);

    public bool IsComplete => Missing.Count == 0 && (TakenAt is not null || KnownCount > 0);

    public static Header Match(RowSource row, ColumnMap map, bool isLabFile)
    {
        var names = row.Texts();
        var count = names.Length;
        while (count > 1 && names[count - 1].Length == 0)
        {
            count--;
        }

        return new Header(map, row.Line, [.. names.Take(count)], isLabFile);
    }

    public FormatException Refusal(string file) =>
        new(
            $"{file} has no column for {string.Join(", nor for ", Missing)}. Found: {Found()}. "
                + "Name it in the column map or state it there as a constant; or check that this is the right file and delimiter."
        );

    private string Found()
    {
        var names = Columns.Take(MostNames).Select(column => PlainText.Cut(column.Header.AsSpan()));
        var more = Columns.Count > MostNames ? $" and {Columns.Count - MostNames:N0} more" : "";
        return string.Join(", ", names) + more;
    }

    /// <summary>A test temperature belongs to the one viscosity beside it; a viscosity without a temperature is none.</summary>
    private void SettleViscosities()
    {
        var viscosities = Columns.Where(column => column.IsViscosity && column.Use == ColumnUse.Reading).ToList();
        if (TestTemperature is not null && viscosities.Count != 1)
        {
            TestTemperature.KeepAsText(
                viscosities.Count == 0 ? "no viscosity stands beside it" : "several viscosities stand beside it"
            );
            TestTemperature = null;
        }

        foreach (var column in viscosities.Where(column => column.Reading is null && TestTemperature is null))
        {
            column.KeepAsText(
                "the temperature of the viscosity is stated neither in the header nor in a column of its own"
            );
        }
    }

    private void NameTexts()
    {
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var column in Columns)
        {
            var name = column.Header.Length == 0 ? $"column {column.Index + 1}" : column.Header;
            var times = seen.TryGetValue(name, out var before) ? before + 1 : 1;
            seen[name] = times;
            column.TextName = times == 1 ? name : $"{name} ({times})";
            if (name.Contains('\uFFFD'))
            {
                column.Doubt =
                    "its header has characters that are no text in the file's encoding; state the encoding in the column map";
            }
        }
    }

    /// <summary>The names of a header, of which each is taken once; the order of the map decides where two could be it.</summary>
    private sealed class Names
    {
        private readonly string[] names;
        private readonly Dictionary<string, int> positions = new(StringComparer.Ordinal);
        private readonly Dictionary<int, Column> taken = [];

        public Names(string[] names)
        {
            this.names = names;
            for (var i = names.Length - 1; i >= 0; i--)
            {
                positions[HeaderText.Bare(names[i])] = i;
            }
        }

        public Column? Taken(int index) => taken.TryGetValue(index, out var column) ? column : null;

        public Column? Take(IReadOnlyList<string> known, ColumnUse use)
        {
            foreach (var name in known)
            {
                if (positions.TryGetValue(HeaderText.Bare(name), out var index) && !taken.ContainsKey(index))
                {
                    var column = new Column(index, names[index], use);
                    taken.Add(index, column);
                    return column;
                }
            }

            return null;
        }
    }
}

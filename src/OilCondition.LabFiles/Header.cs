using System.Globalization;

namespace OilCondition.LabFiles;

/// <summary>The header of a file, matched with a column map.</summary>
internal sealed class Header
{
    private Header(
        IReadOnlyList<string> names,
        int? machine,
        int? sampleNumber,
        int takenAt,
        IReadOnlyList<(int Index, LabColumn Column, string Unit)> readings,
        IReadOnlyList<int> unmapped
    )
    {
        Names = names;
        Machine = machine;
        SampleNumber = sampleNumber;
        TakenAt = takenAt;
        Readings = readings;
        Unmapped = unmapped;
    }

    public IReadOnlyList<string> Names { get; }

    public int? Machine { get; }

    public int? SampleNumber { get; }

    public int TakenAt { get; }

    public int KeyCount => 1 + (Machine is null ? 0 : 1) + (SampleNumber is null ? 0 : 1);

    public IReadOnlyList<(int Index, LabColumn Column, string Unit)> Readings { get; }

    public IReadOnlyList<int> Unmapped { get; }

    public static Header Match(string[] names, string file, ColumnMap map, bool isLabFile)
    {
        var free = Enumerable.Range(0, names.Length).ToList();
        var takenAt = Take(free, names, map.TakenAt) ?? throw Missing(file, "the date of sampling", map.TakenAt, names);
        var machine = isLabFile
            ? Take(free, names, map.Machine) ?? throw Missing(file, "the machine", map.Machine, names)
            : default(int?);
        var sampleNumber = isLabFile
            ? Take(free, names, map.SampleNumber) ?? throw Missing(file, "the sample number", map.SampleNumber, names)
            : default(int?);
        var readings = new List<(int, LabColumn, string)>();
        var unmapped = new List<int>();
        foreach (var index in free)
        {
            var (name, unit) = SplitUnit(names[index]);
            var column =
                map.Columns.FirstOrDefault(one => one.Names.Any(known => Same(known, names[index])))
                ?? map.Columns.FirstOrDefault(one => one.Names.Any(known => Same(known, name)));
            if (column is null)
            {
                unmapped.Add(index);
            }
            else
            {
                readings.Add((index, column, unit.Length > 0 ? unit : column.Unit));
            }
        }

        return new Header(names, machine, sampleNumber, takenAt, readings, unmapped);
    }

    /// <summary>'Viscosity 40C (SUS)' or 'Water [ppm]': the unit is what stands in the last brackets.</summary>
    private static (string Name, string Unit) SplitUnit(string header)
    {
        var open = Math.Max(header.LastIndexOf('['), header.LastIndexOf('('));
        var closed = header.Length > 0 && (header[^1] is ']' or ')');
        return open > 0 && closed
            ? (header.Substring(0, open).Trim(), header.Substring(open + 1, header.Length - open - 2).Trim())
            : (header, "");
    }

    private static int? Take(List<int> free, string[] names, IReadOnlyList<string> known)
    {
        // The order of the map decides where a header has two candidates.
        foreach (var name in known)
        {
            var position = free.FindIndex(index => Same(name, names[index]));
            if (position >= 0)
            {
                var index = free[position];
                free.RemoveAt(position);
                return index;
            }
        }

        return null;
    }

    private static bool Same(string one, string other) =>
        string.Equals(Bare(one), Bare(other), StringComparison.Ordinal);

    private static string Bare(string header) =>
        new([
            .. header
                .ToLower(CultureInfo.InvariantCulture)
                .Where(character => !char.IsWhiteSpace(character) && character != '_')
                .Select(character => character is 'µ' or 'μ' ? 'u' : character),
        ]);

    private static FormatException Missing(string file, string what, IReadOnlyList<string> known, string[] names) =>
        new(
            $"{file} has no column for {what}. Expected one of: {string.Join(", ", known)}. Found: {string.Join(", ", names)}. "
                + "Name it in the column map, or check that this is the right file and delimiter."
        );
}

using Microsoft.Data.Analysis;

namespace OilCondition.DataFrames;

/// <summary>Writes records as frames: long, a row a reading, and wide, a row a record.</summary>
internal static class RecordFrames
{
    private static readonly FrameShape<Row> LongShape = Keys<Row>(row => row.Record)
        .Text(FrameNames.Measurand, row => row.Measurand?.Id)
        .Number(FrameNames.Value, row => row.Measurand is null ? null : row.Reading.Value)
        .Text(FrameNames.Unit, row => row.Measurand?.Unit)
        .Text(FrameNames.Qualifier, row => QualifierSign.Of(row.Reading.Qualifier))
        .Word(FrameNames.Method, row => row.Reading.Method)
        .Text(FrameNames.Header, row => row.Header)
        .Text(FrameNames.Text, row => row.Text);

    public static DataFrame Long(IReadOnlyList<FrameRecord> records)
    {
        var rows = new List<Row>(records.Count);
        foreach (var record in records)
        {
            var before = rows.Count;
            foreach (var pair in record.Readings)
            {
                rows.Add(new Row(record, pair.Key, pair.Value, null, null));
            }

            foreach (var pair in record.Texts)
            {
                rows.Add(new Row(record, null, default, pair.Key, pair.Value));
            }

            if (rows.Count == before)
            {
                rows.Add(new Row(record, null, default, null, null));
            }
        }

        return LongShape.Of(rows);
    }

    public static DataFrame Wide(IReadOnlyList<FrameRecord> records)
    {
        var shape = Keys<FrameRecord>(record => record);
        foreach (var column in MeasurandsOf(records))
        {
            AddMeasurand(shape, column);
        }

        foreach (var header in records.SelectMany(record => record.Texts.Keys).Distinct(StringComparer.Ordinal))
        {
            shape.Text(FrameNames.TextPrefix + header, record => record.Texts.GetValueOrDefault(header));
        }

        return shape.Of(records);
    }

    /// <summary>Which measurands there are, in order of appearance, and whether any reading of them has a qualifier or a method.</summary>
    /// <exception cref="InvalidOperationException">Measurands of one id have readings in several units: all of them are named.</exception>
    private static List<MeasurandColumn> MeasurandsOf(IReadOnlyList<FrameRecord> records)
    {
        var columns = new Dictionary<Measurand, MeasurandColumn>();
        var faults = new List<string>();
        foreach (var (measurand, reading) in records.SelectMany(record => record.Readings))
        {
            if (!columns.TryGetValue(measurand, out var column))
            {
                columns.Add(measurand, column = new MeasurandColumn(measurand));
            }

            if (column.AddUnit(measurand.Unit))
            {
                faults.Add($"{measurand.Id} has readings in '{column.Measurand.Unit}' and in '{measurand.Unit}'.");
            }

            column.HasQualifier |= reading.Qualifier != Qualifier.None;
            column.HasMethod |= reading.Method.Length > 0;
        }

        return faults.Count > 0
            ? throw new InvalidOperationException(
                $"A column has one unit: {string.Join(" ", faults)} A long frame has the unit in each row."
            )
            : [.. columns.Values];
    }

    private static void AddMeasurand(FrameShape<FrameRecord> shape, MeasurandColumn column)
    {
        var measurand = column.Measurand;
        Reading? In(FrameRecord record) => record.Readings.TryGetValue(measurand, out var reading) ? reading : null;
        shape.Number(FrameNames.ValueOf(measurand), record => In(record)?.Value);
        if (column.HasQualifier)
        {
            shape.Text(
                FrameNames.QualifierOf(measurand),
                record => In(record) is { } reading ? QualifierSign.Of(reading.Qualifier) : null
            );
        }

        if (column.HasMethod)
        {
            shape.Word(FrameNames.MethodOf(measurand), record => In(record)?.Method);
        }
    }

    /// <summary>The keys that join a row to its machine, charge, sample, and line of its file.</summary>
    private static FrameShape<T> Keys<T>(Func<T, FrameRecord> of) =>
        new FrameShape<T>()
            .Text(FrameNames.Machine, row => of(row).MachineId)
            .Text(FrameNames.Charge, row => of(row).Charge)
            .Text(FrameNames.Origin, row => of(row).Origin)
            .Text(FrameNames.SampleNumber, row => of(row).Sample?.SampleNumber)
            .MomentWithOffset(row => of(row).At)
            .Text(FrameNames.Sheet, row => of(row).Sheet)
            .Whole(FrameNames.Line, row => of(row).Line);

    private readonly record struct Row(
        FrameRecord Record,
        Measurand? Measurand,
        Reading Reading,
        string? Header,
        string? Text
    );

    private sealed class MeasurandColumn(Measurand measurand)
    {
        private readonly HashSet<string> units = new(StringComparer.Ordinal) { measurand.Unit };

        public Measurand Measurand { get; } = measurand;

        /// <summary>Whether a unit is none of those before.</summary>
        public bool AddUnit(string unit) =>
            !string.Equals(unit, Measurand.Unit, StringComparison.Ordinal) && units.Add(unit);

        public bool HasQualifier { get; set; }

        public bool HasMethod { get; set; }
    }
}

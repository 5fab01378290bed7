namespace OilCondition.DataFrames;

/// <summary>The keys of the rows of a frame: which machine, which sample, when, and where in which file.</summary>
internal sealed class RecordKeys(FrameInput input)
{
    private readonly Func<long, string?> machine = input.Text(FrameNames.Machine, isNeeded: true);
    private readonly Func<long, string?> charge = input.Text(FrameNames.Charge);
    private readonly Func<long, string?> origin = input.Text(FrameNames.Origin);
    private readonly Func<long, string?> sampleNumber = input.Text(FrameNames.SampleNumber);
    private readonly MomentCells moments = new(input);
    private readonly Func<long, string?> sheet = input.Text(FrameNames.Sheet);
    private readonly Func<long, int?> line = input.Whole(FrameNames.Line);

    /// <summary>The keys of a row; false with a problem where one is bad, and the row cannot be placed.</summary>
    public bool TryRead(long row, List<FrameProblem> problems, out RecordKey key)
    {
        key = default;
        var from = origin(row);
        var isSensor = string.Equals(from, FrameRecord.FromSensor, StringComparison.Ordinal);
        if (!isSensor && from is not (null or "" or FrameRecord.FromSample))
        {
            problems.Add(input.RefusedRow(row, FrameNames.Origin, "allowed: sample, sensor or null."));
            return false;
        }

        var machineId = machine(row) ?? "";
        if (!isSensor && string.IsNullOrWhiteSpace(machineId))
        {
            problems.Add(input.RefusedRow(row, FrameNames.Machine, "a sample needs its machine."));
            return false;
        }

        if (!moments.TryRead(row, problems, out var at))
        {
            return false;
        }

        key = new RecordKey(
            machineId,
            charge(row),
            isSensor,
            isSensor ? null : sampleNumber(row),
            at,
            sheet(row),
            line(row)
        );
        return true;
    }
}

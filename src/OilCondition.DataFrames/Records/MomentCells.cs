using OilCondition.Text;

namespace OilCondition.DataFrames;

/// <summary>The moment of each row: UTC, and the offset with which it is to be written where the frame has it.</summary>
internal sealed class MomentCells(FrameInput input)
{
    /// <summary>.NET allows no offset beyond 14 hours.</summary>
    private const int MostOffsetMinutes = 14 * 60;

    private readonly Func<long, DateTime?> atUtc = input.Moment(FrameNames.AtUtc);
    private readonly Func<long, int?> offsetMinutes = input.Whole(FrameNames.OffsetMinutes);

    /// <summary>The moment of a row; false with a problem where there is none that a record can have.</summary>
    public bool TryRead(long row, List<FrameProblem> problems, out DateTimeOffset at)
    {
        at = default;
        var offset = offsetMinutes(row) ?? 0;
        if (offset is < -MostOffsetMinutes or > MostOffsetMinutes)
        {
            problems.Add(
                input.RefusedRow(
                    row,
                    FrameNames.OffsetMinutes,
                    FormattableString.Invariant($"allowed: {-MostOffsetMinutes} to {MostOffsetMinutes} min.")
                )
            );
            return false;
        }

        if (atUtc(row) is not { } utc || !Guard.IsMoment(utc) || !Guard.IsMoment(utc.AddMinutes(offset)))
        {
            problems.Add(
                input.RefusedRow(
                    row,
                    FrameNames.AtUtc,
                    FormattableString.Invariant($"allowed: the years {Guard.FirstYear} to {Guard.LastYear}.")
                )
            );
            return false;
        }

        at = new DateTimeOffset(DateTime.SpecifyKind(utc, DateTimeKind.Utc)).ToOffset(TimeSpan.FromMinutes(offset));
        return true;
    }
}

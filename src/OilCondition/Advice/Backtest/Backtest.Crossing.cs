using OilCondition.Text;

namespace OilCondition;

public sealed partial class Backtest
{
    /// <summary>A limit that was crossed: the first reading beyond it since the oil change or the last treatment.</summary>
    public sealed class Crossing
    {
        internal Crossing(
            string machineId,
            Measurand measurand,
            LimitSide side,
            double limit,
            SeriesPoint point,
            DateTimeOffset? warnedAt,
            IReadOnlyList<Alert> warnedBy
        )
        {
            MachineId = machineId;
            Measurand = measurand;
            Side = side;
            Limit = limit;
            Point = point;
            WarnedAt = warnedAt;
            WarnedBy = warnedBy;
        }

        /// <summary>The machine.</summary>
        public string MachineId { get; }

        /// <summary>What crossed.</summary>
        public Measurand Measurand { get; }

        /// <summary>On which side.</summary>
        public LimitSide Side { get; }

        /// <summary>The limit, in the measurand's unit: the strictest alarm figure, or the strictest alert figure where there is no alarm.</summary>
        public double Limit { get; }

        /// <summary>The first reading beyond it.</summary>
        public SeriesPoint Point { get; }

        /// <summary>
        /// The replayed day from which on an alert of the same subject stood without a gap until the crossing; null when none did.
        /// </summary>
        public DateTimeOffset? WarnedAt { get; }

        /// <summary>The alerts of its subject that stood on the last replayed day before it; empty when none did.</summary>
        public IReadOnlyList<Alert> WarnedBy { get; }

        /// <summary>Time from that day to the crossing; none for a silent crossing.</summary>
        public TimeSpan Warning => WarnedAt is { } at ? Point.At - at : TimeSpan.Zero;

        /// <summary>Whether no alert stood before it.</summary>
        public bool IsSilent => WarnedAt is null;

        internal string Subject => ProblemIdentity.Of(Measurand, Side).ToString();

        /// <summary>Which, when, and how long before it was told.</summary>
        /// <returns>For example <c>2025-08-14 M1 iron beyond 40 mg/kg: 84 days of warning by remaining-life-short</c>.</returns>
        public override string ToString() =>
            $"{PlainText.Date(Point.At)} {MachineId} {Measurand.Name} beyond {PlainText.Reported(Limit)} {Measurand.Unit}".TrimEnd()
            + (
                IsSilent
                    ? ": silent"
                    : $": {PlainText.Number(Math.Floor(Warning.TotalDays))} days of warning by "
                        + string.Join(
                            ", ",
                            WarnedBy
                                .SelectMany(alert => alert.Findings)
                                .Select(finding => PlainText.Kebab(finding.Code))
                                .Distinct(StringComparer.Ordinal)
                        )
            );
    }
}

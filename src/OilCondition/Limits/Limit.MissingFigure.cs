using OilCondition.Text;

namespace OilCondition.Limits;

/// <content>Figures that a fleet did not give.</content>
public sealed partial class Limit
{
    /// <summary>A percentile that a fleet did not give, while it may have given the others of the limit.</summary>
    public sealed record MissingFigure
    {
        internal MissingFigure(
            LimitSide side,
            LimitState zone,
            double percentile,
            LimitReason reason,
            int charges,
            int chargesNeeded
        )
        {
            Side = side;
            Zone = zone;
            Percentile = percentile;
            Reason = reason;
            Charges = charges;
            ChargesNeeded = chargesNeeded;
        }

        /// <summary>The side of the limit.</summary>
        public LimitSide Side { get; }

        /// <summary>Alert or alarm.</summary>
        public LimitState Zone { get; }

        /// <summary>The percentile that was asked for, in %.</summary>
        public double Percentile { get; }

        /// <summary>Why it is missing: the fleet is too small for it, or its readings there are only bounds.</summary>
        public LimitReason Reason { get; }

        /// <summary>Oil charges of the fleet with a reading; each counts once.</summary>
        public int Charges { get; }

        /// <summary>Oil charges with a reading that the percentile takes at least.</summary>
        public int ChargesNeeded { get; }

        /// <summary>The figure and why it is missing.</summary>
        /// <returns>For example <c>upper alarm, percentile 98: fleet too small (60 of 114 oil charges)</c>.</returns>
        public override string ToString() =>
            $"{PlainText.Spaced(Side)} {PlainText.Spaced(Zone)}, percentile {PlainText.Reported(Percentile)}: {PlainText.Spaced(Reason)} "
            + $"({Charges} of {ChargesNeeded} oil charges)";
    }
}

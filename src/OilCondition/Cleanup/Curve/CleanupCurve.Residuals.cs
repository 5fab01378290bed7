using System.Runtime.InteropServices;
using OilCondition.Text;

namespace OilCondition.Cleanup;

/// <content>What the curve leaves of each reading, and the errors of its parts.</content>
public sealed partial class CleanupCurve
{
    // Made when it is first asked for, and never changed: two threads would write the same.
    private IReadOnlyList<FittedReading>? fitted;

    /// <summary>Each of <see cref="UsedReadings"/> beside the curve, in the same order; none without a curve.</summary>
    public IReadOnlyList<FittedReading> FittedReadings =>
        fitted ??= HasCurve ? [.. Enumerable.Range(0, UsedReadings.Count).Select(Beside)] : [];

    /// <summary>Standard errors and covariances of start, floor and rate; null without a curve.</summary>
    public ParameterErrors? Errors => HasCurve ? new ParameterErrors(fall) : null;

    private FittedReading Beside(int index)
    {
        var value = ValueAt(usedMoments[index]);
        return new FittedReading(UsedReadings[index], usedMoments[index], used[index], value, fall.Standardised(index));
    }

    /// <summary>A reading beside the curve that was fitted to it.</summary>
    [StructLayout(LayoutKind.Auto)]
    public readonly record struct FittedReading
    {
        internal FittedReading(int position, DateTimeOffset at, Reading reading, double fitted, double? standardised)
        {
            Position = position;
            At = at;
            Reading = reading;
            Fitted = fitted;
            Residual = standardised.HasValue ? reading.Value - fitted : null;
            Standardised = standardised;
        }

        /// <summary>Position, from 0, in the lists that were given.</summary>
        public int Position { get; }

        /// <summary>When it was taken.</summary>
        public DateTimeOffset At { get; }

        /// <summary>The reading as it was given.</summary>
        public Reading Reading { get; }

        /// <summary>The curve there, in the unit of the readings.</summary>
        public double Fitted { get; }

        /// <summary>Reading less curve, in the unit of the readings; null where the reading is only known to lie below a limit.</summary>
        public double? Residual { get; }

        /// <summary>
        /// The residual over the standard deviation of one reading there, <see cref="ScatterAt"/>; with logarithmic noise ln(reading / curve) over that of the
        /// logarithm. How hard the reading itself pulled the curve is not taken out. Null as for the residual; 0 where nothing scatters.
        /// </summary>
        public double? Standardised { get; }

        /// <summary>The reading, the curve and the residual.</summary>
        /// <returns>For example <c>2025-01-06 09:00: 412, curve 405, residual 7 (0.8 standard deviations)</c>.</returns>
        public override string ToString()
        {
            var beside = $"{PlainText.Time(At)}: {Reading}, curve {PlainText.Number(Fitted)}";
            return Residual is { } residual && Standardised is { } deviations
                ? $"{beside}, residual {PlainText.Number(residual)} ({PlainText.Tenths(deviations)} standard deviations)"
                : beside;
        }
    }

    /// <summary>Errors of start, floor and rate by the delta method: (J'WJ)⁻¹ with 1/variance of each reading for weight.</summary>
    /// <remarks>
    /// The variances are those of the scatter that was fitted (<see cref="ScatterAt"/>), with <see cref="DegreesOfFreedom"/>, and count as known. With readings below a
    /// limit it is the observed information, scaled to the same degrees of freedom. Below about two time constants the intervals of the profile
    /// likelihood are to be preferred. A part that was known, at its bound or not determined has an error of 0.
    /// </remarks>
    public sealed class ParameterErrors
    {
        internal ParameterErrors(FittedFall fall)
        {
            var (covariance, rate) = (fall.Covariance, fall.Rate);
            Start = Math.Sqrt(covariance.Start);
            Floor = Math.Sqrt(covariance.Floor);
            RatePerHour = rate * Math.Sqrt(covariance.LogRate);
            CovarianceStartFloor = covariance.StartFloor;
            CovarianceStartRatePerHour = rate * covariance.StartLogRate;
            CovarianceFloorRatePerHour = rate * covariance.FloorLogRate;
        }

        /// <summary>Standard error of the start, in the unit of the readings.</summary>
        public double Start { get; }

        /// <summary>Standard error of the floor, in the unit of the readings.</summary>
        public double Floor { get; }

        /// <summary>Standard error of the rate.</summary>
        public double RatePerHour { get; }

        /// <summary>Covariance of start and floor, in the square of the unit of the readings.</summary>
        public double CovarianceStartFloor { get; }

        /// <summary>Covariance of start and rate, in the unit of the readings per hour.</summary>
        public double CovarianceStartRatePerHour { get; }

        /// <summary>Covariance of floor and rate, in the unit of the readings per hour.</summary>
        public double CovarianceFloorRatePerHour { get; }

        /// <summary>The three standard errors.</summary>
        /// <returns>For example <c>standard errors: start 12.3, floor 8.1, rate 0.02 per h</c>.</returns>
        public override string ToString() =>
            $"standard errors: start {PlainText.Number(Start)}, floor {PlainText.Number(Floor)}, "
            + $"rate {PlainText.Number(RatePerHour)} per h";
    }
}

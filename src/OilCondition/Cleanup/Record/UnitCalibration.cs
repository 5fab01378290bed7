using System.Diagnostics.CodeAnalysis;
using OilCondition.Text;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>What a purifier really removes per pass in this oil, from one finished run, for the next plan.</summary>
/// <remarks>
/// η = k V/Q · η_unit/η_plan.   k: rate of the run's curve, V and Q: volume and flow of the record;  η_plan: what the plan of the same run came to as a whole, below the
/// unit's η_unit where the vapour itself raises the equilibrium. The interval is that of the curve's rate; volume and flow are taken as exact, so meter the oil
/// that passes. A tank that is not well mixed shows as a low η, and is one for the next plan of the same tank as well.
/// </remarks>
/// <example>
/// <code>
/// if (UnitCalibration.TryFrom(record, plan, out var found, out var reason))
/// {
///     var next = PurificationPlan.Create(nextJob, found.For(plan.Unit));
///     var band = next.Band(found.Errors(InputErrors.Usual));
/// }
/// </code>
/// </example>
public sealed class UnitCalibration
{
    private UnitCalibration(
        Ratio removalPerPass,
        Ratio lower,
        Ratio upper,
        double confidence,
        Temperature temperature,
        KinematicViscosity viscosity
    )
    {
        RemovalPerPass = removalPerPass;
        Lower = lower;
        Upper = upper;
        Confidence = confidence;
        Temperature = temperature;
        Viscosity = viscosity;
    }

    /// <summary>Removal per pass on the excess over equilibrium, η.</summary>
    public Ratio RemovalPerPass { get; }

    /// <summary>Lower end of its interval.</summary>
    public Ratio Lower { get; }

    /// <summary>Upper end of its interval, 1 at most.</summary>
    public Ratio Upper { get; }

    /// <summary>Two-sided confidence level of the interval.</summary>
    public double Confidence { get; }

    /// <summary>Oil temperature behind the heater at which it was found.</summary>
    public Temperature Temperature { get; }

    /// <summary>Viscosity of the oil at that temperature; other oils are planned by it.</summary>
    public KinematicViscosity Viscosity { get; }

    /// <summary>The removal per pass of a run, or why it gives none.</summary>
    /// <param name="record">The record of the run, with a curve of its water.</param>
    /// <param name="plan">The plan of that run: oil, unit, tank.</param>
    /// <param name="calibration">The figure with its interval.</param>
    /// <param name="reason">Why there is none.</param>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException">Record or plan is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level lies outside its range.</exception>
    public static bool TryFrom(
        CleanupRecord record,
        PurificationPlan plan,
        [NotNullWhen(true)] out UnitCalibration? calibration,
        [NotNullWhen(false)] out string? reason,
        double confidence = 0.9
    )
    {
        Guard.NotNull(record);
        Guard.NotNull(plan);
        Guard.OpenUnitInterval(confidence);
        (calibration, reason) = Of(record, plan, confidence);
        return calibration is not null;
    }

    /// <summary>The same unit with what was found.</summary>
    /// <param name="unit">The unit.</param>
    /// <returns>The unit, whose removal per pass is that of the run at the viscosity of the run.</returns>
    /// <exception cref="ArgumentNullException">The unit is null.</exception>
    public PurificationUnit For(PurificationUnit unit) =>
        Guard.NotNull(unit).With(removalPerPass: RemovalPerPass, removalViscosity: Viscosity);

    /// <summary>Errors of inputs with that of the removal per pass as the run gives it.</summary>
    /// <param name="errors">The errors of the other inputs.</param>
    /// <returns>The errors.</returns>
    /// <exception cref="ArgumentNullException">The errors are null.</exception>
    public InputErrors Errors(InputErrors errors)
    {
        var width = Math.Log(Units(Upper) / Units(Lower));
        var quantile = MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, 0.5 + Confidence / 2);
        return Guard
            .NotNull(errors)
            .WithRemovalPerPass(Ratio.FromDecimalFractions(Math.Min(1, width / (2 * quantile))));
    }

    /// <summary>The figure with its interval.</summary>
    /// <returns>For example <c>45.2 % a pass (41 to 49.8 %), found at 58.3 °C and 21.4 mm²/s</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(RemovalPerPass.Percent)} % a pass ({PlainText.Number(Lower.Percent)} to {PlainText.Number(Upper.Percent)} %), "
        + $"found at {PlainText.Tenths(Temperature.DegreesCelsius)} °C and {PlainText.Number(Viscosity.Centistokes)} mm²/s";

    private static (UnitCalibration? Found, string? Reason) Of(
        CleanupRecord record,
        PurificationPlan plan,
        double confidence
    )
    {
        var charge = record.Facts.Loop.Charge;
        if (!(record.Length.TotalHours > 0 && record.VolumePassed.Liters > 0))
        {
            return (null, "The run has no length, or no oil passed the unit.");
        }

        var flow = VolumeFlow.FromLitersPerHour(record.VolumePassed.Liters / record.Length.TotalHours);
        var performance = new LoopPerformance(record.Status.Curve, new CleanupLoop(charge, flow));
        var observed = performance.RemovalPerPass(confidence);
        if (observed is not { Estimate: { } estimate, Lower: { } lower, Upper: { } upper })
        {
            return (
                null,
                "The readings do not bound the rate of the fall from both sides; more of them are needed while it falls."
            );
        }

        var planned = PlannedPerformance.Of(plan).RemovalPerPass.DecimalFractions;
        var factor = plan.Unit.RemovalPerPass.DecimalFractions / planned;
        if (lower.DecimalFractions * factor > 1)
        {
            return (null, "More than all would leave in a pass: flow or volume of the oil are not as stated.");
        }

        if (!(lower.DecimalFractions > 0))
        {
            return (null, "The readings do not exclude that nothing is removed.");
        }

        var rise = plan.End.ProcessTemperature - plan.End.TankTemperature;
        var temperature = record.Status.Temperature is { } oil ? oil + rise : plan.End.ProcessTemperature;
        return (
            new UnitCalibration(
                Share(estimate),
                Share(lower),
                Share(upper),
                confidence,
                temperature,
                plan.Job.Oil.ViscosityLine.ViscosityAt(temperature).Viscosity
            ),
            null
        );

        Ratio Share(Ratio one) => Ratio.FromDecimalFractions(Math.Min(1, one.DecimalFractions * factor));
    }

    /// <summary>Transfer units of a removal, −ln(1 − η); of one that takes all out, those of 99.9 %.</summary>
    private static double Units(Ratio removal) => -Math.Log(Math.Max(1e-3, 1 - removal.DecimalFractions));
}

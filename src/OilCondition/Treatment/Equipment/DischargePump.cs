using OilCondition.Text;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>The pump that draws the oil out of a vacuum chamber: what it can draw of thick oil, and from which temperature on.</summary>
/// <remarks>
/// <para>
/// Head left for friction: H = h + (p − p_v)/(ρ g) − NPSH_r.   h: height of oil above the pump [m]; p, p_v: chamber and vapour pressure [Pa]; NPSH_r: head
/// that the pump needs [m]. Laminar friction (Hagen-Poiseuille): H_f = 128 ν L Q/(π g d⁴); above a Reynolds number 4 Q/(π d ν) of 2300 that of a smooth
/// pipe, f = 0.3164 Re^−0.25 (Blasius). ν [m²/s]; L: suction line with fittings as their equivalent length [m]; d: inner diameter [m].
/// </para>
/// <para>
/// Atmosphere does not help here, so that a pump that runs well elsewhere starves under a chamber. A pump of variable speed slows to the flow that
/// the head carries; one of fixed speed cavitates. What the pump needs is taken as the same at every speed, which is on the safe side. Oil that still
/// gives off water or gas boils at the chamber's own pressure, and nothing but the column pushes it: this is the default.
/// </para>
/// <para>Source: laws of pipe flow, any handbook of fluid mechanics (from memory). Entry loss and velocity head are left out, below 2 cm at 0.5 m/s.</para>
/// </remarks>
/// <example>
/// <code>
/// var pump = new DischargePump(VolumeFlow.FromLitersPerMinute(25), height: Length.FromMeters(1.2), suctionLength: Length.FromMeters(2),
///     suctionDiameter: Length.FromMillimeters(40), headNeeded: Length.FromMeters(0.4), isVariableSpeed: true);
/// var cold = pump.At(oil, Temperature.FromDegreesCelsius(20), Pressure.FromMillibars(60));   // cold.Flow, cold.Outcome
/// </code>
/// </example>
public sealed class DischargePump
{
    private const double Gravity = 9.80665;
    private const double HighestLaminar = 2300;

    /// <summary>Describes a pump with its suction line.</summary>
    /// <param name="fullFlow">Flow at rated speed, above 0.</param>
    /// <param name="height">Height of the oil in the chamber above the pump, 0 to 100 m.</param>
    /// <param name="suctionLength">Length of the suction line with fittings as their equivalent length, 1 mm to 1000 m.</param>
    /// <param name="suctionDiameter">Inner diameter of the suction line, 1 mm to 2 m.</param>
    /// <param name="headNeeded">Net positive suction head that the pump needs, 0 to 20 m, from its maker.</param>
    /// <param name="isVariableSpeed">Whether its speed falls with what it can draw.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public DischargePump(
        VolumeFlow fullFlow,
        Length height,
        Length suctionLength,
        Length suctionDiameter,
        Length headNeeded,
        bool isVariableSpeed
    )
    {
        Guard.InRange(fullFlow.LitersPerMinute, 1e-6, 1e6, "L/min", nameof(fullFlow));
        Guard.InRange(height.Meters, 0, 100, "m", nameof(height));
        Guard.InRange(suctionLength.Meters, 1e-3, 1000, "m", nameof(suctionLength));
        Guard.InRange(suctionDiameter.Meters, 1e-3, 2, "m", nameof(suctionDiameter));
        Guard.InRange(headNeeded.Meters, 0, 20, "m", nameof(headNeeded));
        FullFlow = fullFlow;
        Height = height;
        SuctionLength = suctionLength;
        SuctionDiameter = suctionDiameter;
        HeadNeeded = headNeeded;
        IsVariableSpeed = isVariableSpeed;
    }

    /// <summary>Flow at rated speed.</summary>
    public VolumeFlow FullFlow { get; }

    /// <summary>Height of the oil in the chamber above the pump.</summary>
    public Length Height { get; }

    /// <summary>Length of the suction line with fittings as their equivalent length.</summary>
    public Length SuctionLength { get; }

    /// <summary>Inner diameter of the suction line.</summary>
    public Length SuctionDiameter { get; }

    /// <summary>Net positive suction head that the pump needs.</summary>
    public Length HeadNeeded { get; }

    /// <summary>Whether its speed falls with what it can draw.</summary>
    public bool IsVariableSpeed { get; }

    /// <summary>What it draws at a temperature.</summary>
    /// <param name="oil">The oil.</param>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <param name="chamberPressure">Absolute pressure in the chamber, 1 Pa to 110 kPa.</param>
    /// <param name="vapourPressure">
    /// Pressure at which the oil gives off vapour or gas, 0 to the chamber's; null for the chamber's own. 0 for oil that gives off nothing more.
    /// </param>
    /// <returns>The flow, and what bounds it.</returns>
    /// <exception cref="ArgumentNullException">The oil is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public Draw At(TreatedOil oil, Temperature temperature, Pressure chamberPressure, Pressure? vapourPressure = null)
    {
        var thick = Guard.NotNull(oil).ViscosityLine.ViscosityAt(temperature);
        var left = HeadLeft(oil, temperature, chamberPressure, vapourPressure);
        var viscosity = thick.Viscosity.Centistokes * 1e-6;
        var most = left > 0 ? Carried(left, viscosity) : 0;
        var full = FullFlow.CubicMetersPerSecond;
        var outcome =
            left <= 0 ? DrawOutcome.NoFlow
            : most >= full ? DrawOutcome.FullFlow
            : IsVariableSpeed ? DrawOutcome.Slowed
            : DrawOutcome.Cavitates;
        var flow = Math.Min(full, most);
        return new Draw(
            outcome,
            thick,
            flow,
            Reynolds(flow, viscosity),
            left,
            flow > 0 ? Friction(flow, viscosity) : 0
        );
    }

    /// <summary>The temperature from which on it can draw a flow; laminar, as thick oil is.</summary>
    /// <remarks>ν = π g d⁴ H/(128 L Q), and the oil's own line tells where. The head is taken at 40 °C: the column is one of oil.</remarks>
    /// <param name="oil">The oil.</param>
    /// <param name="flow">Flow to be drawn, above 0.</param>
    /// <param name="chamberPressure">Absolute pressure in the chamber, 1 Pa to 110 kPa.</param>
    /// <param name="coldest">The temperature, with its viscosity; flagged where extrapolated.</param>
    /// <param name="vapourPressure">As in <see cref="At"/>.</param>
    /// <returns>False where the head is used up without any flow.</returns>
    /// <exception cref="ArgumentNullException">The oil is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public bool TryColdestFor(
        TreatedOil oil,
        VolumeFlow flow,
        Pressure chamberPressure,
        [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out ViscosityPoint? coldest,
        Pressure? vapourPressure = null
    )
    {
        Guard.InRange(flow.LitersPerMinute, 1e-6, 1e6, "L/min", nameof(flow));
        var left = HeadLeft(Guard.NotNull(oil), Temperature.FromDegreesCelsius(40), chamberPressure, vapourPressure);
        var metres = SuctionDiameter.Meters;
        var centistokes =
            1e6
            * Math.PI
            * Gravity
            * Math.Pow(metres, 4)
            * left
            / (128 * SuctionLength.Meters * flow.CubicMetersPerSecond);
        var inRange = Math.Min(
            PhysicalRange.HighestCentistokes,
            Math.Max(PhysicalRange.LowestCentistokes, centistokes)
        );
        coldest = left > 0 ? oil.ViscosityLine.TemperatureFor(KinematicViscosity.FromCentistokes(inRange)) : null;
        return coldest is not null;
    }

    /// <summary>The pump in a few words.</summary>
    /// <returns>For example <c>discharge pump 25 L/min, 1.2 m of oil above it, variable speed</c>.</returns>
    public override string ToString() =>
        $"discharge pump {PlainText.Number(FullFlow.LitersPerMinute)} L/min, {PlainText.Number(Height.Meters)} m of oil above it, "
        + (IsVariableSpeed ? "variable speed" : "fixed speed");

    private double HeadLeft(TreatedOil oil, Temperature temperature, Pressure chamberPressure, Pressure? vapourPressure)
    {
        var chamber = Guard.InRange(chamberPressure.Pascals, 1, 110_000, "Pa", nameof(chamberPressure));
        var vapour = Guard.InRange(
            vapourPressure?.Pascals ?? chamber,
            0,
            chamber,
            "Pa, no more than the chamber's",
            nameof(vapourPressure)
        );
        var density = oil.Properties.At(temperature).Density.KilogramsPerCubicMeter;
        return Height.Meters + (chamber - vapour) / (density * Gravity) - HeadNeeded.Meters;
    }

    private double Reynolds(double flow, double viscosity) => 4 * flow / (Math.PI * SuctionDiameter.Meters * viscosity);

    /// <summary>Metres of head per m³/s of laminar flow.</summary>
    private double LaminarSlope(double viscosity) =>
        128 * viscosity * SuctionLength.Meters / (Math.PI * Gravity * Math.Pow(SuctionDiameter.Meters, 4));

    /// <summary>Head per flow to the power of 1.75, for turbulent flow in a smooth pipe.</summary>
    private double TurbulentSlope(double viscosity)
    {
        var metres = SuctionDiameter.Meters;
        return 0.3164
            * Math.Pow(Math.PI * metres * viscosity / 4, 0.25)
            * SuctionLength.Meters
            * 8
            / (Math.PI * Math.PI * Gravity * Math.Pow(metres, 5));
    }

    private double Friction(double flow, double viscosity) =>
        Reynolds(flow, viscosity) <= HighestLaminar
            ? LaminarSlope(viscosity) * flow
            : TurbulentSlope(viscosity) * Math.Pow(flow, 1.75);

    private double Carried(double head, double viscosity)
    {
        var laminar = head / LaminarSlope(viscosity);
        if (Reynolds(laminar, viscosity) <= HighestLaminar)
        {
            return laminar;
        }

        // Between the two laws the flow stays where laminar flow ends: it would carry more, turbulent flow would carry less.
        var end = HighestLaminar * Math.PI * SuctionDiameter.Meters * viscosity / 4;
        return Math.Max(end, Math.Pow(head / TurbulentSlope(viscosity), 1 / 1.75));
    }

    /// <summary>What becomes of a pump that draws out of a vacuum.</summary>
    public enum DrawOutcome
    {
        /// <summary>It draws its full flow.</summary>
        FullFlow,

        /// <summary>Its speed falls to the flow that the head carries.</summary>
        Slowed,

        /// <summary>At fixed speed it asks for more than the head carries: it cavitates.</summary>
        Cavitates,

        /// <summary>The pump needs more head than there is, at any flow.</summary>
        NoFlow,
    }

    /// <summary>What a pump draws at one temperature.</summary>
    public sealed record Draw
    {
        internal Draw(
            DrawOutcome outcome,
            ViscosityPoint oil,
            double cubicMetrePerSecond,
            double reynolds,
            double headLeftMetres,
            double frictionMetres
        )
        {
            Outcome = outcome;
            Oil = oil;
            Flow = VolumeFlow.FromCubicMetersPerSecond(cubicMetrePerSecond);
            Reynolds = reynolds;
            HeadLeft = Length.FromMeters(headLeftMetres);
            Friction = Length.FromMeters(frictionMetres);
        }

        /// <summary>What bounds the flow.</summary>
        public DrawOutcome Outcome { get; }

        /// <summary>Temperature and viscosity of the oil; flagged where extrapolated.</summary>
        public ViscosityPoint Oil { get; }

        /// <summary>Flow that is drawn, the full one at most.</summary>
        public VolumeFlow Flow { get; }

        /// <summary>Reynolds number in the suction line.</summary>
        public double Reynolds { get; }

        /// <summary>Whether the flow is laminar, at a Reynolds number of 2300 at most.</summary>
        public bool IsLaminar => Reynolds <= HighestLaminar;

        /// <summary>Head that is left for friction; negative where the pump needs more than there is.</summary>
        public Length HeadLeft { get; }

        /// <summary>Head that friction takes at this flow.</summary>
        public Length Friction { get; }

        /// <summary>Whether more oil comes into the chamber than is drawn out: its level rises until it floods.</summary>
        /// <param name="inflow">Oil that comes in, 0 or more.</param>
        /// <returns>True where the chamber floods in the end.</returns>
        /// <exception cref="ArgumentOutOfRangeException">The inflow is negative or not finite.</exception>
        public bool Floods(VolumeFlow inflow) =>
            Guard.NotNegative(inflow.LitersPerMinute, "L/min", nameof(inflow)) > Flow.LitersPerMinute * (1 + 1e-9);

        /// <summary>How long the chamber takes to flood, V/(Q_in − Q_out).</summary>
        /// <param name="inflow">Oil that comes in, 0 or more.</param>
        /// <param name="freeVolume">Volume above the usual level, 1 mL to 10⁶ L.</param>
        /// <param name="time">The time; zero where the method returns false.</param>
        /// <returns>False where it does not flood.</returns>
        /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
        public bool TryTimeToFlood(VolumeFlow inflow, Volume freeVolume, out TimeSpan time)
        {
            Guard.InRange(freeVolume.Liters, 1e-3, 1e6, "L", nameof(freeVolume));
            var floods = Floods(inflow);
            time = floods
                ? Elapsed.FromMinutes(freeVolume.Liters / (inflow.LitersPerMinute - Flow.LitersPerMinute))
                : TimeSpan.Zero;
            return floods;
        }

        /// <summary>The draw in one line.</summary>
        /// <returns>For example <c>12.3 L/min at 20 °C, 520 mm²/s: slowed, laminar</c>.</returns>
        public override string ToString() =>
            $"{PlainText.Number(Flow.LitersPerMinute)} L/min of {Oil}: {PlainText.Spaced(Outcome)}"
            + (
                Outcome == DrawOutcome.NoFlow ? ""
                : IsLaminar ? ", laminar"
                : ", not laminar"
            );
    }
}

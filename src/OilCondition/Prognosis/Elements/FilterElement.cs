using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Prognosis;

/// <summary>A filter element: its pressure drop clean and spent, and the dirt that it holds.</summary>
/// <remarks>
/// <para>
/// Flow through the medium is laminar, so that Δp goes with ν Q: a drop is referred to rated viscosity and flow, Δp_ref = Δp ν_r Q_r/(ν Q), before it
/// is judged. Cold oil alone trips an indicator.
/// </para>
/// <para>
/// Share used x: Δp_ref = Δp_clean + (Δp_terminal − Δp_clean) x³. The third power is a public guide of a filter's maker, by which half of the
/// terminal drop means 80 % used; real elements differ with their medium. Terminal drop and retained capacity are terms of ISO 16889: capacity there
/// is of test dust at steady flow, and service gives less.
/// </para>
/// <para>The drop is that of the element: take the housing's off, which goes with Q².</para>
/// </remarks>
/// <example>
/// <code>
/// var element = new FilterElement(VolumeFlow.FromLitersPerMinute(20), KinematicViscosity.FromCentistokes(32),
///     cleanDrop: Pressure.FromBars(0.25), terminalDrop: Pressure.FromBars(2.5), dirtCapacity: Mass.FromGrams(60));
/// var used = element.ShareUsed(new ElementReading(at, Pressure.FromBars(1.1), flow, viscosity));
/// </code>
/// </example>
public sealed class FilterElement
{
    /// <summary>Describes an element.</summary>
    /// <param name="ratedFlow">Flow at which its drops are stated, above 0.</param>
    /// <param name="ratedViscosity">Viscosity at which its drops are stated, 0.21 to 2e7 mm²/s.</param>
    /// <param name="cleanDrop">Pressure drop of the clean element, 1 Pa to 10 MPa.</param>
    /// <param name="terminalDrop">Pressure drop at which it is spent, at least 1.1 times the clean one, up to 10 MPa.</param>
    /// <param name="dirtCapacity">Dirt that it holds then, above 0 up to 1000 kg; null where not known.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public FilterElement(
        VolumeFlow ratedFlow,
        KinematicViscosity ratedViscosity,
        Pressure cleanDrop,
        Pressure terminalDrop,
        Mass? dirtCapacity = null
    )
    {
        Guard.InRange(ratedFlow.LitersPerMinute, 1e-6, 1e6, "L/min", nameof(ratedFlow));
        PhysicalRange.Centistokes(ratedViscosity);
        Guard.InRange(cleanDrop.Pascals, 1, 1e7, "Pa", nameof(cleanDrop));
        Guard.InRange(terminalDrop.Pascals, 1.1 * cleanDrop.Pascals, 1e7, "Pa", nameof(terminalDrop));
        if (dirtCapacity is { } grams)
        {
            Guard.InRange(grams.Grams, 1e-6, 1e6, "g", nameof(dirtCapacity));
        }

        RatedFlow = ratedFlow;
        RatedViscosity = ratedViscosity;
        CleanDrop = cleanDrop;
        TerminalDrop = terminalDrop;
        DirtCapacity = dirtCapacity;
    }

    /// <summary>Flow at which its drops are stated.</summary>
    public VolumeFlow RatedFlow { get; }

    /// <summary>Viscosity at which its drops are stated.</summary>
    public KinematicViscosity RatedViscosity { get; }

    /// <summary>Pressure drop of the clean element.</summary>
    public Pressure CleanDrop { get; }

    /// <summary>Pressure drop at which it is spent.</summary>
    public Pressure TerminalDrop { get; }

    /// <summary>Dirt that it holds when it is spent; null where not known.</summary>
    public Mass? DirtCapacity { get; }

    /// <summary>A pressure drop at rated flow and viscosity.</summary>
    /// <param name="reading">What was read.</param>
    /// <returns>The drop that the element would show there.</returns>
    /// <exception cref="ArgumentNullException">The reading is null.</exception>
    public Pressure ReferredDrop(ElementReading reading) =>
        Pressure.FromPascals(Guard.NotNull(reading).Drop.Pascals / Load(reading.Flow, reading.Viscosity));

    /// <summary>Share of its dirt capacity that is used by a reading.</summary>
    /// <param name="reading">What was read.</param>
    /// <returns>0 where the drop is that of a clean element or less; 1 at the terminal drop, more beyond it.</returns>
    /// <exception cref="ArgumentNullException">The reading is null.</exception>
    public Ratio ShareUsed(ElementReading reading)
    {
        var rise = (ReferredDrop(reading).Pascals - CleanDrop.Pascals) / (TerminalDrop.Pascals - CleanDrop.Pascals);
        return Ratio.FromDecimalFractions(rise > 0 ? Math.Pow(rise, 1.0 / 3) : 0);
    }

    /// <summary>The drop that an element shows, for example at a cold start: above its bypass setting oil goes round it.</summary>
    /// <param name="used">Share of its dirt capacity that is used, 0 to 2.</param>
    /// <param name="flow">Oil flow, above 0.</param>
    /// <param name="viscosity">Viscosity, 0.21 to 2e7 mm²/s.</param>
    /// <returns>The drop.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public Pressure DropAt(Ratio used, VolumeFlow flow, KinematicViscosity viscosity)
    {
        var share = Guard.InRange(used.DecimalFractions, 0, 2, "(ratio)", nameof(used));
        Guard.InRange(flow.LitersPerMinute, 1e-6, 1e6, "L/min", nameof(flow));
        PhysicalRange.Centistokes(viscosity);
        return (CleanDrop + (TerminalDrop - CleanDrop) * (share * share * share)) * Load(flow, viscosity);
    }

    /// <summary>How long a new element lasts on a known flow of dirt, capacity × share in service / dirt.</summary>
    /// <param name="dirt">Dirt that it catches, above 0: concentration before it times flow.</param>
    /// <param name="inService">Share of the test capacity that service gives, above 0 up to 1.</param>
    /// <param name="life">The time; zero where the method returns false.</param>
    /// <returns>False where its capacity is not known, or where it would outlast any calendar.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public bool TryLifeByDirt(MassFlow dirt, Ratio inService, out TimeSpan life)
    {
        Guard.InRange(dirt.GramsPerHour, 1e-12, 1e9, "g/h", nameof(dirt));
        Guard.InRange(inService.DecimalFractions, 1e-6, 1, "(ratio)", nameof(inService));
        var hours = (DirtCapacity?.Grams ?? 0) * inService.DecimalFractions / dirt.GramsPerHour;
        var isTold = hours > 0 && hours < TimeSpan.MaxValue.TotalHours;
        life = isTold ? Elapsed.FromHours(hours) : TimeSpan.Zero;
        return isTold;
    }

    /// <summary>The element in a few words.</summary>
    /// <returns>For example <c>element 0.25 to 2.5 bar at 20 L/min and 32 mm²/s, holds 60 g</c>.</returns>
    public override string ToString() =>
        $"element {PlainText.Number(CleanDrop.Bars)} to {PlainText.Number(TerminalDrop.Bars)} bar at "
        + $"{PlainText.Number(RatedFlow.LitersPerMinute)} L/min and {PlainText.Number(RatedViscosity.Centistokes)} mm²/s"
        + (DirtCapacity is { } held ? $", holds {PlainText.Number(held.Grams)} g" : "");

    private double Load(VolumeFlow flow, KinematicViscosity viscosity) =>
        flow.LitersPerMinute * viscosity.Centistokes / (RatedFlow.LitersPerMinute * RatedViscosity.Centistokes);
}

using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>A breather filled with desiccant: how much water it holds, and how long it lasts on a tank.</summary>
/// <remarks>
/// Held = uptake × mass of desiccant; days = held / water that the tank breathes in a day (<see cref="TankBreathing"/>). Silica gel takes up to some
/// 40 % of its dry mass, and lets humid air through from about a third on (a public guide of a breather's maker). In air of 40 % relative humidity
/// and below it takes about 20 % (from memory). Air drawn in dries on the way; air breathed out takes a little water with it, which is not counted:
/// the days are on the short side.
/// </remarks>
/// <example>
/// <code>
/// var breather = new DesiccantBreather(Mass.FromKilograms(0.7), Ratio.FromPercent(30));
/// var lasts = breather.TryLife(breathing, air, out var life);   // life.TotalDays
/// </code>
/// </example>
public sealed class DesiccantBreather
{
    /// <summary>Describes a breather.</summary>
    /// <param name="desiccant">Dry mass of desiccant, 1 g to 10 t.</param>
    /// <param name="uptake">Water that it takes, as a share of its dry mass, above 0 up to 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public DesiccantBreather(Mass desiccant, Ratio uptake)
    {
        Guard.InRange(desiccant.Kilograms, 1e-3, 1e4, "kg", nameof(desiccant));
        Guard.InRange(uptake.DecimalFractions, 1e-6, 0.5, "(ratio)", nameof(uptake));
        Desiccant = desiccant;
        Uptake = uptake;
    }

    /// <summary>Dry mass of desiccant.</summary>
    public Mass Desiccant { get; }

    /// <summary>Water that it takes, as a share of its dry mass.</summary>
    public Ratio Uptake { get; }

    /// <summary>Water that it holds when it is spent.</summary>
    public Mass WaterHeld => Desiccant * Uptake.DecimalFractions;

    /// <summary>How long it lasts on a tank in air of one humidity.</summary>
    /// <param name="breathing">How the tank breathes.</param>
    /// <param name="air">The air that is drawn in; take the wettest weeks of the year.</param>
    /// <param name="life">The time until it is spent; zero where the method returns false.</param>
    /// <returns>False where the tank draws in no water, so that it lasts without end.</returns>
    /// <exception cref="ArgumentNullException">Breathing or air is null.</exception>
    public bool TryLife(TankBreathing breathing, HumidAir air, out TimeSpan life)
    {
        var perDay = Guard.NotNull(breathing).WaterIn(air).KilogramsPerSecond * 86_400;
        var ends = perDay > 0 && WaterHeld.Kilograms / perDay < TimeSpan.MaxValue.TotalDays;
        life = ends ? Elapsed.FromDays(WaterHeld.Kilograms / perDay) : TimeSpan.Zero;
        return ends;
    }

    /// <summary>The breather in one line.</summary>
    /// <returns>For example <c>0.7 kg of desiccant, holds 210 g of water</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(Desiccant.Kilograms)} kg of desiccant, holds {PlainText.Number(WaterHeld.Grams)} g of water";
}

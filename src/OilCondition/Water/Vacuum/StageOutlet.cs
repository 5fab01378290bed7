using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Water;

/// <summary>Oil that leaves one equilibrium stage under vacuum, and what the pump and the heater have to do for it.</summary>
public sealed record StageOutlet
{
    internal StageOutlet(
        WaterState water,
        MassFlow evaporated,
        double moleFraction,
        VolumeFlow gasFlow,
        Power latentHeat
    )
    {
        Water = water;
        Evaporated = evaporated;
        WaterMoleFraction = Ratio.FromDecimalFractions(moleFraction);
        GasFlow = gasFlow;
        LatentHeat = latentHeat;
    }

    /// <summary>Water in the oil that leaves, all of it and split.</summary>
    public WaterState Water { get; }

    /// <summary>Water that leaves with the gas; negative where humid sweep air wets the oil.</summary>
    public MassFlow Evaporated { get; }

    /// <summary>Mole fraction of water in the gas that leaves, y.</summary>
    public Ratio WaterMoleFraction { get; }

    /// <summary>Vapour and air at the stage's temperature and pressure, as ideal gases: what the pump must swallow.</summary>
    public VolumeFlow GasFlow { get; }

    /// <summary>Heat that the evaporating water takes; 0 where none evaporates. Without it the oil cools.</summary>
    public Power LatentHeat { get; }

    /// <summary>The outlet in one line.</summary>
    /// <returns>For example <c>100 mg/kg at 65 °C, 0.1 kg/h evaporates, gas 12 m³/h</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(Water.Total.PartsPerMillion, Water.Total.PartsPerMillion / 10)} mg/kg at "
        + $"{PlainText.Tenths(Water.Saturation.Temperature.DegreesCelsius)} °C, "
        + $"{PlainText.Number(Evaporated.KilogramsPerHour)} kg/h evaporates, gas {PlainText.Number(GasFlow.CubicMetersPerHour)} m³/h";
}

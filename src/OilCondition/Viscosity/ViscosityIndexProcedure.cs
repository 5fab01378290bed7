namespace OilCondition.Viscosity;

/// <summary>Which procedure of ASTM D2270 gave a viscosity index.</summary>
public enum ViscosityIndexProcedure
{
    /// <summary>Procedure A: the oil at 40 °C is as thick as the reference oil of index 100, or thicker (index up to 100).</summary>
    A,

    /// <summary>Procedure B: the oil at 40 °C is thinner than the reference oil of index 100 (index above 100).</summary>
    B,
}

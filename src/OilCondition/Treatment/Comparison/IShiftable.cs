namespace OilCondition.Treatment;

/// <summary>A treatment whose own figures may be out: the same one with a shift of them.</summary>
internal interface IShiftable
{
    ITreatment Shifted(InputShift shift);
}

using OilCondition;
using OilCondition.Limits;
using UnitsNet;

namespace FirstCalls;

/// <summary>What must be known before the first call: a machine with its oil, and limits to begin with. The figures are invented.</summary>
public static class OwnMachine
{
    public static Machine Run(string limitFile)
    {
        // snippet
        var newOil = new Dictionary<Measurand, Reading>
        {
            [Measurands.Viscosity40] = new(45.8),
            [Measurands.AcidNumber] = new(0.08),
            [Measurands.Rpvot] = new(880),
        };
        var machine = new Machine(
            "HP-CWP2", // as in the maintenance system and in the file of the laboratory
            "Circulating-water pump 2 bearing",
            new Oil("invented circulating oil VG 46", newOil),
            Volume.FromLiters(420),
            runningTemperature: Temperature.FromDegreesCelsius(58),
            standstillTemperature: Temperature.FromDegreesCelsius(18)
        );
        File.WriteAllText(limitFile, LimitSet.StarterJson(StarterEquipment.Circulating)); // once; then it is yours to edit
        // end

        return machine;
    }
}

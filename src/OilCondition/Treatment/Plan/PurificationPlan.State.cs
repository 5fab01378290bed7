using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

public sealed partial class PurificationPlan
{
    /// <summary>Where a planned treatment stands at a moment, and what it has taken until then.</summary>
    public sealed record State
    {
        internal State(TreatmentJob job, PurificationUnit unit, PlanPhysics physics, double seconds, double[] state)
        {
            var now = physics.At(state[0], state[1]);
            Time = Elapsed.FromSeconds(seconds);
            TankTemperature = Temperature.FromDegreesCelsius(state[0]);
            ProcessTemperature = Temperature.FromDegreesCelsius(now.ProcessCelsius);
            ReturnTemperature = Temperature.FromDegreesCelsius(now.Pass.ReturnCelsius);
            Flow = VolumeFlow.FromCubicMetersPerSecond(now.FlowCubicMetrePerSecond);
            Water = job.Oil.SaturationCurve.SplitComputed(
                MassFraction.FromPartsPerMillion(1e6 * Math.Min(1, Math.Max(0, state[1]))),
                TankTemperature
            );

            Particles = ParticleLevels.Computed(state[2], state[3], state[4]);
            ChamberPressure = Pressure.FromPascals(now.Pass.Pascal);
            Evaporation = MassFlow.FromKilogramsPerSecond(now.Pass.EvaporatedKilogramPerSecond);
            VapourFlow = MassFlow.FromKilogramsPerSecond(now.Pass.VapourKilogramPerSecond);
            Limit = now.Pass.Limit;
            HeaterPower = Power.FromWatts(now.HeaterWatts);
            IsHeldToRise = now.IsHeldToRise;
            HeaterEnergy = Energy.FromJoules(state[5]).ToUnit(UnitsNet.Units.EnergyUnit.KilowattHour);
            LostHeat = Energy.FromJoules(state[6]).ToUnit(UnitsNet.Units.EnergyUnit.KilowattHour);
            LatentHeat = Energy.FromJoules(state[7]).ToUnit(UnitsNet.Units.EnergyUnit.KilowattHour);
            TotalEnergy = HeaterEnergy + unit.MotorPower * Time;
            Evaporated = Mass.FromKilograms(state[8]);
            Condensate = Volume.FromLiters(1000 * state[9] / WaterContent.WaterDensity.KilogramsPerCubicMeter);
            Exhausted = Mass.FromKilograms(state[10]);
            VolumePassed = Volume.FromCubicMeters(state[11]);
            Turnovers = state[11] / job.Reservoir.OilVolume.CubicMeters;
        }

        /// <summary>Time from the start.</summary>
        public TimeSpan Time { get; }

        /// <summary>Oil temperature in the tank.</summary>
        public Temperature TankTemperature { get; }

        /// <summary>Oil temperature behind the heater.</summary>
        public Temperature ProcessTemperature { get; }

        /// <summary>Oil temperature behind the chamber, cooled by what evaporates.</summary>
        public Temperature ReturnTemperature { get; }

        /// <summary>Oil flow, as the pump's viscosity limit allows.</summary>
        public VolumeFlow Flow { get; }

        /// <summary>Water in the tank: all of it, dissolved and free at the tank's temperature.</summary>
        public WaterState Water { get; }

        /// <summary>Particles in the tank, with their code.</summary>
        public ParticleLevels Particles { get; }

        /// <summary>Absolute pressure in the chamber: above the set one while the vacuum pump cannot follow.</summary>
        public Pressure ChamberPressure { get; }

        /// <summary>Water that leaves the oil; negative where humid sweep air wets it.</summary>
        public MassFlow Evaporation { get; }

        /// <summary>All vapour that leaves the chamber, with the moisture of the sweep air.</summary>
        public MassFlow VapourFlow { get; }

        /// <summary>What bounds the removal.</summary>
        public RemovalLimit Limit { get; }

        /// <summary>Heat that the heater gives.</summary>
        public Power HeaterPower { get; }

        /// <summary>Whether the heater is turned down to keep the highest rise per pass.</summary>
        public bool IsHeldToRise { get; }

        /// <summary>Heat given since the start.</summary>
        public Energy HeaterEnergy { get; }

        /// <summary>Heat lost to the surroundings since the start; negative while the tank is colder than they are.</summary>
        public Energy LostHeat { get; }

        /// <summary>Heat taken by evaporating water since the start.</summary>
        public Energy LatentHeat { get; }

        /// <summary>Heater and motors since the start.</summary>
        public Energy TotalEnergy { get; }

        /// <summary>Water that left the oil since the start.</summary>
        public Mass Evaporated { get; }

        /// <summary>Water in the condensate tank since the start, at 20 °C; with the moisture of the sweep air in it.</summary>
        public Volume Condensate { get; }

        /// <summary>Vapour that left with the exhaust since the start.</summary>
        public Mass Exhausted { get; }

        /// <summary>Oil that passed the unit since the start.</summary>
        public Volume VolumePassed { get; }

        /// <summary>Times that the whole oil has passed the unit since the start.</summary>
        public double Turnovers { get; }

        /// <summary>The state in one line.</summary>
        /// <returns>For example <c>6 h: 52.3 °C, 640 mg/kg, 19/17/14, 118 kWh, limited by heat</c>.</returns>
        public override string ToString() =>
            $"{PlainText.Number(Time.TotalHours)} h: {PlainText.Number(TankTemperature.DegreesCelsius)} °C, "
            + $"{PlainText.Number(Water.Total.PartsPerMillion)} mg/kg, {Particles.Code}, "
            + $"{PlainText.Number(TotalEnergy.KilowattHours)} kWh, limited by {Word(Limit)}";

        private static string Word(RemovalLimit limit) =>
            limit switch
            {
                RemovalLimit.TooColdOrShallow => "cold oil or shallow vacuum",
                RemovalLimit.SinglePass => "removal per pass",
                _ => PlainText.Spaced(limit),
            };
    }
}

using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Kinds;

/// <summary>Settling in a tank that is left to cool. The station is invented.</summary>
public class CoolingTankTests
{
    private static SettlingAndDraining Settling(double micrometres = 100, double fine = 10, double? celsius = null) =>
        new(
            Length.FromMeters(2),
            Kit.Micrometres(micrometres),
            celsius is { } warm ? Sump.Celsius(warm) : null,
            fineDropletDiameter: Kit.Micrometres(fine)
        );

    /// <summary>
    /// A second route: drops followed one by one. What was free is 200 layers, what falls out in five minutes is spread over 10 layers of its own, what comes in
    /// starts at the top; each sinks at the Stokes velocity of the moment (9.80665 d² Δρ/(18 ρ ν), written here) and is drained when it arrives.
    /// </summary>
    [Theory]
    [InlineData(60, 10, 150, 1500, 400, 40, 0)]
    [InlineData(60, 10, 150, 1500, 200, 60, 0)]
    [InlineData(60, 10, 150, 200, 120, 120, 3)]
    [InlineData(20, 35, 300, 1500, 300, 40, 10)]
    public void Drops_are_followed_one_by_one(
        double start,
        double ambient,
        double loss,
        double ppm,
        double target,
        double fine,
        double gram
    )
    {
        const double Minute = 300;
        var job = Sump.Job(
            ppm,
            target,
            Sump.Tank(20_000, start, ambient, loss, ingressGramPerHour: gram),
            horizonHours: 400
        );
        var oil = job.Oil;
        var mass = job.OilMass.Kilograms;
        var heat = mass * oil.Properties.At(Sump.Celsius((start + ambient) / 2)).HeatCapacity.JoulesPerKilogramKelvin;
        double Sinks(double celsius, double micrometres)
        {
            var density = oil.Properties.At(Sump.Celsius(celsius)).Density.KilogramsPerCubicMeter;
            var water = 1 / WaterVapour.LiquidVolume(Sump.Celsius(celsius)).CubicMetersPerKilogram;
            var viscosity = oil.ViscosityLine.ViscosityAt(Sump.Celsius(celsius)).Viscosity.Centistokes * 1e-6;
            return 9.80665 * micrometres * micrometres * 1e-12 * (water - density) / (18 * density * viscosity);
        }

        double Holds(double celsius) => Math.Pow(10, 7.42 - 1670 / (celsius + 273.15));
        var free = Math.Max(0, ppm - Holds(start));
        var coarse = Enumerable.Range(0, 200).Select(i => (Height: 2 * (i + 0.5) / 200, Content: free / 200)).ToList();
        List<(double Height, double Content)> fines = [];
        List<(double Height, double Content)> entered = [];
        var (celsius, dissolved, hours, all, pending) = (start, ppm - free, 0.0, ppm, 0.0);
        while (all > target)
        {
            celsius -= loss * (celsius - ambient) / heat * Minute;
            hours += Minute / 3600;
            var comesIn = gram / 3600 * Minute * 1e3 / mass;
            var taken = Math.Min(comesIn, Math.Max(0, Holds(celsius) - dissolved));
            dissolved += taken;
            entered.Add((2, comesIn - taken));
            var falls = Math.Max(0, dissolved - Holds(celsius));
            dissolved -= falls;
            fines = Sunk(fines, Sinks(celsius, fine));
            coarse = Sunk(coarse, Sinks(celsius, 100));
            entered = Sunk(entered, Sinks(celsius, 100));
            pending += falls;
            if (pending > 1)
            {
                fines.AddRange(Enumerable.Range(0, 10).Select(i => (2 * (i + 0.5) / 10, pending / 10)));
                pending = 0;
            }

            all = Math.Max(
                dissolved
                    + coarse.Sum(one => one.Content)
                    + fines.Sum(one => one.Content)
                    + entered.Sum(one => one.Content),
                Math.Min(ppm, Holds(celsius))
            );
            hours.ShouldBeLessThan(400);
        }

        Settling(100, fine).Assess(job).Water.Hours().ShouldBe(hours, 0.02 * hours + 0.1);

        static List<(double, double)> Sunk(List<(double Height, double Content)> drops, double speed) =>
            [.. drops.Select(one => (one.Height - speed * Minute, one.Content)).Where(one => one.Item1 > 0)];
    }

    /// <summary>20 m³ at 60 °C that no one heats: more than five times the hours that 60 °C for ever would take; held warm by 15 kW it takes those.</summary>
    [Fact]
    public void A_tank_left_alone_takes_five_times_as_long()
    {
        double Hours(double watt) =>
            Settling(fine: 20)
                .Assess(
                    Sump.Job(
                        1500,
                        280,
                        Sump.Tank(20_000, start: 60, ambient: 10, loss: 300, heatWatt: watt),
                        Sump.Oil(line: Sump.Vg320)
                    )
                )
                .Water.Hours();
        var (alone, held) = (Hours(0), Hours(15_000));
        alone.ShouldBeGreaterThan(5 * held);
        Hours(7_500).ShouldBeInRange(held, alone);
    }

    /// <summary>10 kg/h into 1734 kg is 5767 mg/kg an hour, and drops of 100 µm at 20 °C take hours to the bottom.</summary>
    [Fact]
    public void What_comes_in_is_counted()
    {
        WhyNot? Outcome(double gram) =>
            Settling().Assess(Sump.Job(1000, 150, Sump.Tank(ingressGramPerHour: gram))).WhyNotWater;
        Outcome(0).ShouldBeNull();
        Outcome(10_000).ShouldBe(WhyNot.IngressTooHigh);
        double Hours(double gram) =>
            Settling().Assess(Sump.Job(1000, 150, Sump.Tank(ingressGramPerHour: gram))).Water.Hours();
        Hours(1).ShouldBeGreaterThan(Hours(0));
    }

    [Fact]
    public void Detergents_ice_and_the_pour_point_stop_it()
    {
        TreatedOil Oil(bool detergents = false, double? pour = null) =>
            new(
                Sump.Oil().Properties,
                Sump.Mineral,
                Sump.Vg46,
                Sump.Celsius(90),
                detergents,
                pour is { } cold ? Sump.Celsius(cold) : null
            );
        WhyNot? Outcome(Reservoir tank, TreatedOil oil, double micrometres = 100) =>
            Settling(micrometres).Assess(Sump.Job(1000, 150, tank, oil, horizonHours: 2400)).WhyNotWater;
        Outcome(Sump.Tank(), Oil()).ShouldBeNull();
        Outcome(Sump.Tank(), Oil(detergents: true)).ShouldBe(WhyNot.DetergentsInOil);
        Outcome(Sump.Tank(start: -5, ambient: -5), Oil()).ShouldBe(WhyNot.WaterFreezes);
        Outcome(Sump.Tank(start: 20, ambient: -15), Oil(), 30).ShouldBe(WhyNot.WaterFreezes);
        Outcome(Sump.Tank(start: 20, ambient: 2), Oil(pour: 6), 30).ShouldBe(WhyNot.BelowPourPoint);

        // Large drops are down before it freezes.
        Outcome(Sump.Tank(start: 20, ambient: -15), Oil(), 1000).ShouldBeNull();
    }
}

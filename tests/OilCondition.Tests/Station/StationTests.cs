using CsCheck;
using OilCondition.Tests.Properties;
using OilCondition.Treatment;

namespace OilCondition.Tests.StationFiles;

/// <summary>A station file is read as it is, every fault is named with its place, and nothing is lost. The station is invented.</summary>
public class StationTests
{
    private const string Whole = """
        {
          "name": "invented plant",
          "note": "no plant data",
          "asOf": "2026-01-31T06:00:00Z",
          "oils": [
            { "id": "t46", "name": "invented VG 46", "highestCelsius": 80, "hasDetergents": false,
              "new": { "viscosity-40c": 46, "viscosity-100c": 6.8, "density-15c": 870 },
              "saturation": { "points": [ { "celsius": 20, "mgPerKg": 90 }, { "celsius": 60, "mgPerKg": 330 } ],
                              "source": { "kind": "user-data", "text": "invented" } } },
            { "id": "g320", "name": "invented VG 320",
              "saturation": { "a": 7.0, "bKelvin": 1500, "lowestCelsius": 10, "highestCelsius": 80,
                              "source": { "kind": "from-memory", "text": "invented" } } }
          ],
          "limitSets": [
            { "name": "own", "limits": [
              { "measurand": "water-content", "kind": "absolute", "upper": { "alert": 200, "alarm": 500 },
                "source": { "kind": "user-data", "text": "invented" } } ] }
          ],
          "machines": [
            { "id": "M1", "name": "bearing", "oil": "t46", "oilLitres": 1800, "runningCelsius": 48, "standstillCelsius": 14,
              "limits": "own", "sensorLogs": ["m1.csv"],
              "tank": { "ambientCelsius": 15, "lossWattPerKelvin": 60, "waterIngressGramsPerHour": 10, "highestCelsius": 90, "steelKilojoulePerKelvin": 500 } },
            { "id": "M2", "name": "gearbox", "oil": "g320", "oilLitres": 240, "runningCelsius": 57, "standstillCelsius": 6, "limits": "outer" }
          ],
          "events": [
            { "machine": "M1", "kind": "oil-change", "at": "2024-05-14T08:00:00+02:00" },
            { "machine": "M1", "kind": "top-up", "at": "2025-03-18T09:00:00Z", "litres": 60 },
            { "machine": "M2", "kind": "vacuum-dehydration", "at": "2025-12-10T06:00:00Z", "endedAt": "2025-12-12T18:00:00Z",
              "measurand": "water-content", "target": 0.006, "unit": "%" }
          ],
          "equipment": [
            { "id": "V", "name": "unit", "kind": "vacuum-dehydration", "flowLitresPerMinute": 25, "highestViscosityCentistokes": 300,
              "startViscosityCentistokes": 900, "heaterKilowatts": 12, "motorKilowatts": 4, "processCelsius": 65, "highestCelsius": 90,
              "chamberMillibar": 60, "dryAirKilogramsPerHour": 0.5, "pumpCubicMetresPerHour": 200, "condenserCelsius": 15,
              "removalPerPass": 0.6, "filter": { "beta4": 75, "beta6": 200, "beta14": 1000 },
              "dischargePump": { "litresPerMinute": 25, "heightMetres": 1.2, "suctionMetres": 2, "suctionMillimetres": 40,
                                 "headNeededMetres": 0.4, "variableSpeed": true },
              "vacuumPump": { "kind": "oil-sealed", "cubicMetresPerHour": 200, "vapourToleranceMillibar": 30, "gasBallast": true, "ultimateMillibar": 1 } },
            { "id": "F", "name": "loop", "kind": "fine-filtration", "flowLitresPerMinute": 20, "highestViscosityCentistokes": 400,
              "workingCelsius": 40, "heaterKilowatts": 3, "motorKilowatts": 1, "filter": { "beta4": 75, "beta6": 200, "beta14": 1000 },
              "elements": 2, "connectsTo": ["M1"] },
            { "id": "C", "name": "coalescer", "kind": "coalescer", "flowLitresPerMinute": 20, "highestViscosityCentistokes": 400,
              "removalPerPass": 0.8, "elements": 2 },
            { "id": "A", "name": "elements", "kind": "water-absorbing-elements", "flowLitresPerMinute": 20,
              "highestViscosityCentistokes": 400, "removalPerPass": 0.5, "elementLitres": 0.4 },
            { "id": "Z", "name": "centrifuge", "kind": "centrifuge", "flowLitresPerMinute": 20, "highestViscosityCentistokes": 400,
              "equivalentSquareMetres": 2000, "dropletMicrometres": 30, "emulsionMicrometres": 2, "particleKilogramsPerCubicMetre": 2650 },
            { "id": "S", "name": "settling tank", "kind": "settling-and-draining", "heightMetres": 1.2, "dropletMicrometres": 50, "celsius": 40 },
            { "id": "P", "name": "purge", "kind": "head-space-purge", "dryAirKilogramsPerHour": 20, "airCelsius": 20,
              "dewPointCelsius": -40, "atmosphereMillibar": 1000, "approach": 0.3, "motorKilowatts": 0.2 },
            { "id": "D", "name": "drums", "kind": "drain-and-refill", "heel": 0.05, "newWaterMgPerKg": 60,
              "newParticlesPerMillilitre": { "at4": 2500, "at6": 640, "at14": 40 }, "transferLitresPerMinute": 40 }
          ],
          "trains": [
            { "id": "T", "name": "settle, heat, dry, filter", "connectsTo": ["M1"],
              "stages": [ { "equipment": "S", "hours": 12 }, { "heaterKilowatts": 9, "heatedSquareMetres": 0.6, "celsius": 45 },
                          { "equipment": "V", "waterMgPerKg": 80 }, { "equipment": "F", "code": "17/15/12" } ] }
          ]
        }
        """;

    private static readonly Dictionary<string, LimitSet> Outer = new()
    {
        ["outer"] = LimitSet.Parse(
            """
            { "name": "a file of its own", "limits": [ { "measurand": "iron", "kind": "absolute", "upper": { "alert": 50 },
              "source": { "kind": "user-data", "text": "invented" } } ] }
            """
        ),
    };

    [Fact]
    public void Machines_come_with_their_oil_temperatures_limits_events_and_tank()
    {
        var station = Station.Parse(Whole, Outer);

        station.Name.ShouldBe("invented plant");
        station.AsOf.ShouldBe(new DateTimeOffset(2026, 1, 31, 6, 0, 0, TimeSpan.Zero));
        station.TryMachine("M1", out var bearing).ShouldBeTrue();
        bearing.Machine.ChargeVolume.Liters.ShouldBe(1800);
        bearing.Machine.RunningTemperature.DegreesCelsius.ShouldBe(48, 1e-9);
        bearing.Machine.StandstillTemperature.DegreesCelsius.ShouldBe(14, 1e-9);
        bearing
            .Machine.Oil.SaturationCurve!.SaturationAt(UnitsNet.Temperature.FromDegreesCelsius(60))
            .Content.PartsPerMillion.ShouldBe(330, 1e-6);
        bearing.Limits!.Name.ShouldBe("own");
        bearing.SensorLogs.ShouldBe(["m1.csv"]);
        bearing.Tank!.LossWattPerKelvin.ShouldBe(60);
        bearing.Tank.WaterIngress.GramsPerHour.ShouldBe(10, 1e-9);
        bearing
            .TreatedOil!.ViscosityLine.ViscosityAt(UnitsNet.Temperature.FromDegreesCelsius(100))
            .Viscosity.Centistokes.ShouldBe(6.8, 1e-6);
        bearing.Events.Select(one => one.GetType()).ShouldBe([typeof(OilChange), typeof(TopUp)]);
        bearing.Events[0].At.ShouldBe(new DateTimeOffset(2024, 5, 14, 6, 0, 0, TimeSpan.Zero));

        station.TryMachine("M2", out var gearbox).ShouldBeTrue();
        gearbox.Limits!.Name.ShouldBe("a file of its own");
        gearbox.TreatedOil.ShouldBeNull();
        gearbox.Tank.ShouldBeNull();
        // 0.006 % is 60 mg/kg.
        gearbox.Events.ShouldHaveSingleItem().ShouldBeOfType<TreatmentRun>().Target.ShouldBe(60, 1e-9);
    }

    [Fact]
    public void Equipment_of_every_kind_is_read()
    {
        var equipment = Station.Parse(Whole, Outer).Equipment.Where(one => one.Treatment.Kind is not null).ToList();

        equipment
            .Select(one => one.Treatment.GetType())
            .ShouldBe([
                typeof(VacuumDehydration),
                typeof(FineFiltration),
                typeof(Coalescer),
                typeof(WaterAbsorbingElements),
                typeof(Centrifuge),
                typeof(SettlingAndDraining),
                typeof(HeadSpacePurge),
                typeof(DrainAndRefill),
            ]);
        equipment.Select(one => one.Treatment.Kind!.Value).ShouldBe(Enum.GetValues<TreatmentKind>(), ignoreOrder: true);
        var unit = equipment[0].Treatment.ShouldBeOfType<VacuumDehydration>().Unit;
        unit.HeaterPower.Kilowatts.ShouldBe(12);
        unit.Chamber.AbsolutePressure.Millibars.ShouldBe(60, 1e-9);
        unit.Chamber.PumpCapacity!.Value.CubicMetersPerHour.ShouldBe(200, 1e-9);
        unit.StartViscosity.Centistokes.ShouldBe(900, 1e-9);
        unit.Filter!.At6.Value.ShouldBe(200);
    }

    [Fact]
    public void A_train_is_made_of_the_equipment_of_the_file()
    {
        var station = Station.Parse(Whole, Outer);
        var train = station.Equipment[^1];
        var stages = train.Treatment.ShouldBeOfType<TreatmentTrain>().Stages;

        train.ToString().ShouldBe("T settle, heat, dry, filter (settle, heat, dry, filter)");
        train.ConnectsTo.ShouldBe(["M1"]);
        stages[0].Treatment.ShouldBe(station.Equipment[5].Treatment);
        stages[0].Duration.ShouldBe(TimeSpan.FromHours(12));
        stages[1].Heater!.HeatedArea.SquareMeters.ShouldBe(0.6, 1e-9);
        stages[1].Temperature!.Value.DegreesCelsius.ShouldBe(45, 1e-9);
        stages[2].Target!.Water!.Value.PartsPerMillion.ShouldBe(80, 1e-9);
        stages[3].Target!.Code!.ToString().ShouldBe("17/15/12");
    }

    [Fact]
    public void A_unit_comes_with_its_pumps()
    {
        var unit = Station.Parse(Whole, Outer).Equipment[0];

        unit.DischargePump!.ToString().ShouldBe("discharge pump 25 L/min, 1.2 m of oil above it, variable speed");
        unit.VacuumPump!.ToString()
            .ShouldBe("oil sealed 200 m³/h, bears 30 hPa of vapour, gas ballast open, not below 1 hPa");
        Pump("\"kind\": \"dry\", \"cubicMetresPerHour\": 40").ShouldBe("dry 40 m³/h, not below 2 hPa");
        Pump("\"kind\": \"liquid-ring\", \"cubicMetresPerHour\": 40, \"ringWaterCelsius\": 20")
            .ShouldBe("liquid ring 40 m³/h, ring water at 20 °C, not below 23.4 hPa");

        static string Pump(string fields)
        {
            const string Written =
                "\"kind\": \"oil-sealed\", \"cubicMetresPerHour\": 200, \"vapourToleranceMillibar\": 30, \"gasBallast\": true, \"ultimateMillibar\": 1";
            Whole.ShouldContain(Written);
            return Station.Parse(Whole.Replace(Written, fields), Outer).Equipment[0].VacuumPump!.ToString();
        }
    }

    [Fact]
    public void Equipment_fits_where_the_file_says()
    {
        var station = Station.Parse(Whole, Outer);
        var (unit, loop) = (station.Equipment[0], station.Equipment[1]);

        unit.FitsOn(station.Machines[1].Machine).ShouldBeTrue();
        loop.FitsOn(station.Machines[0].Machine).ShouldBeTrue();
        loop.FitsOn(station.Machines[1].Machine).ShouldBeFalse();
    }

    [Fact]
    public void A_history_has_the_events_of_the_file()
    {
        var machine = Station.Parse(Whole, Outer).Machines[0];
        var sample = new OilSample(
            "1",
            new DateTimeOffset(2025, 6, 1, 0, 0, 0, TimeSpan.Zero),
            new Dictionary<Measurand, Reading> { [Measurands.WaterContent] = new(80) }
        );

        var history = machine.History([sample], []);

        history.Events.Count.ShouldBe(2);
        history.ChargeAt(sample.TakenAt).Since.ShouldBe(machine.Events[0].At);
    }

    [Fact]
    public void All_faults_are_named_together_each_with_its_place()
    {
        var broken = Whole
            .Replace("\"oilLitres\": 1800", "\"oilLitres\": -1")
            .Replace("\"oil\": \"g320\"", "\"oil\": \"g32\"")
            .Replace("\"litres\": 60", "\"liters\": 60")
            .Replace("2024-05-14T08:00:00+02:00", "14.05.2024")
            .Replace("\"measurand\": \"water-content\", \"target\"", "\"measurand\": \"water\", \"target\"")
            .Replace("\"density-15c\": 870", "\"density-15c\": 8.7")
            .Replace("\"kind\": \"coalescer\"", "\"kind\": \"coalesce\"")
            .Replace("\"chamberMillibar\": 60", "\"chamberMillibar\": 60000")
            .Replace("\"limits\": \"outer\"", "\"limits\": \"outside\"")
            .Replace("\"ambientCelsius\": 15", "\"ambientCelsius\": 150");

        var message = Should.Throw<FormatException>(() => Station.Parse(broken, Outer)).Message;

        message.ShouldStartWith("The station file has faults:");
        foreach (
            var place in new[]
            {
                "$.machines[0]: chargeVolume is -1 L",
                "$.machines[1].oil: 'g32' is not the id of an oil",
                "$.events[1].liters: unknown",
                "$.events[1].litres: a number is expected",
                "$.events[0].at: '14.05.2024' is not a moment",
                "$.events[2].measurand: 'water' is not a known measurand",
                "$.oils[0].new.density-15c: 8.7 kg/m³; allowed",
                "$.equipment[2].kind: 'coalesce'; allowed: settling-and-draining",
                "$.equipment[0]: absolutePressure is 6000000 Pa",
                "$.machines[1].limits: 'outside' is not the name of a limit set",
            }
        )
        {
            message.ShouldContain(place);
        }
    }

    [Theory]
    [InlineData("\"connectsTo\": [\"M1\"]", "\"connectsTo\": [\"M9\"]", "$.equipment: 'M9' is not the id of a machine")]
    [InlineData("\"machine\": \"M2\"", "\"machine\": \"M9\"", "$.events: 'M9' is not the id of a machine")]
    [InlineData("\"id\": \"M2\"", "\"id\": \"M1\"", "$.machines: the id 'M1' is there more than once")]
    [InlineData("\"id\": \"T\"", "\"id\": \"V\"", "$.trains: the id 'V' is that of a piece of equipment too")]
    [InlineData(
        "\"equipment\": \"S\"",
        "\"equipment\": \"X\"",
        "$.trains[0].stages[0].equipment: 'X' is not the id of"
    )]
    [InlineData("\"hours\": 12", "\"hours\": 12, \"code\": \"17/15/12\"", "$.trains[0].stages[0]: either 'hours', or")]
    [InlineData("\"hours\": 12", "\"hours\": -1", "$.trains[0].stages[0]: duration is -1 h")]
    [InlineData("\"code\": \"17/15/12\"", "\"code\": \"clean\"", "$.trains[0].stages[3].code: 'clean' is no code")]
    [InlineData("\"heatedSquareMetres\": 0.6, ", "", "$.trains[0].stages[1].heatedSquareMetres: a number is expected")]
    [InlineData(
        "\"kind\": \"oil-sealed\"",
        "\"kind\": \"dry\"",
        "$.equipment[0].vacuumPump.vapourToleranceMillibar: unknown"
    )]
    [InlineData(
        "\"suctionMillimetres\": 40",
        "\"suctionMillimetres\": 0",
        "$.equipment[0].dischargePump: suctionDiameter is 0 m"
    )]
    [InlineData("\"id\": \"F\"", "\"id\": \"V\"", "$.equipment: the id 'V' is there more than once")]
    [InlineData(
        "\"a\": 7.0,",
        "\"a\": 7.0, \"points\": [],",
        "$.oils[1].saturation: either 'points' with two points, or"
    )]
    [InlineData("{ \"celsius\": 20, \"mgPerKg\": 90 }, ", "", "$.oils[0].saturation.points: 1 points were read")]
    [InlineData("\"hasDetergents\": false", "\"hasDetergents\": 0", "$.oils[0].hasDetergents: true or false")]
    [InlineData(
        "\"elements\": 2, \"conn",
        "\"elements\": 2.5, \"conn",
        "$.equipment[1].elements: 2.5; allowed: a whole number"
    )]
    [InlineData(
        "\"asOf\": \"2026-01-31T06:00:00Z\"",
        "\"asOf\": \"2026-01-31T06:00:00\"",
        "$.asOf: '2026-01-31T06:00:00' is not a moment"
    )]
    public void Nothing_is_lost_in_silence(string written, string changed, string fault)
    {
        Whole.ShouldContain(written);

        Should
            .Throw<FormatException>(() => Station.Parse(Whole.Replace(written, changed), Outer))
            .Message.ShouldContain(fault);
    }

    [Fact]
    public void Whatever_stands_in_the_file_the_answer_is_a_station_or_its_faults() =>
        Property.Holds(
            Gen.Select(Gen.Int[0, Whole.Length - 1], Gen.Int[0, 40], Gen.Char.AlphaNumeric),
            drawn =>
            {
                var (at, length, letter) = drawn;
                var cut = Whole.Remove(at, Math.Min(length, Whole.Length - at)).Insert(at, letter.ToString());
                try
                {
                    Station.Parse(cut, Outer).Machines.ShouldNotBeNull();
                }
                catch (FormatException error)
                {
                    error.Message.ShouldNotBeNullOrWhiteSpace();
                }
            }
        );

    [Fact]
    public void Ways_and_crew_are_read_as_they_stand()
    {
        var station = Station.Parse(
            With(
                """, "travel": [ { "from": "hall", "to": "dam", "hours": 0.5 } ], "crew": { "fromHour": 7, "toHour": 17.5, "days": ["mon", "sat"] }"""
            ),
            Outer
        );

        station.Travel.ShouldHaveSingleItem().ToString().ShouldBe("hall to dam, 0.5 h");
        station.Crew!.ToString().ShouldBe("7 to 17.5 h on 2 days a week");
        station.Crew.Days.ShouldBe([DayOfWeek.Monday, DayOfWeek.Saturday]);
        Station.Parse(With(", \"crew\": { \"fromHour\": 0, \"toHour\": 24 }"), Outer).Crew!.Days.Count.ShouldBe(7);
        Station.Parse(Whole, Outer).Crew.ShouldBeNull();
        Station.Parse(Whole, Outer).Travel.ShouldBeEmpty();
    }

    [Theory]
    [InlineData("\"travel\": [ { \"from\": \"a\", \"to\": \"b\" } ]", "$.travel[0].hours: a number is expected")]
    [InlineData("\"travel\": [ { \"from\": \"a\", \"to\": \"a\", \"hours\": 1 } ]", "$.travel[0]: to is a, as from is")]
    [InlineData(
        "\"travel\": [ { \"from\": \"a\", \"to\": \"b\", \"hours\": -1 } ]",
        "$.travel[0].hours: -1 h; allowed: 0 to 8784 h"
    )]
    [InlineData(
        "\"travel\": [ { \"from\": \"a\", \"to\": \"b\", \"hours\": 1 }, { \"from\": \"a\", \"to\": \"b\", \"hours\": 2 } ]",
        "$.travel: the way from 'a' to 'b' is there more than once"
    )]
    [InlineData("\"crew\": { \"fromHour\": 7 }", "$.crew.toHour: a number is expected")]
    [InlineData("\"crew\": { \"fromHour\": 7, \"toHour\": 25 }", "$.crew.toHour: 25 h; allowed: 0 to 24 h")]
    [InlineData("\"crew\": { \"fromHour\": 17, \"toHour\": 7 }", "$.crew: to is 7 h; allowed: after 17 h")]
    [InlineData(
        "\"crew\": { \"fromHour\": 7, \"toHour\": 17, \"days\": [\"monday\"] }",
        "$.crew.days: 'monday'; allowed: sun, mon, tue, wed, thu, fri, sat"
    )]
    [InlineData("\"crew\": { \"fromHour\": 7, \"toHour\": 17, \"day\": 1 }", "$.crew.day: unknown")]
    public void A_fault_of_ways_or_crew_has_its_place(string fields, string fault) =>
        Should.Throw<FormatException>(() => Station.Parse(With(", " + fields), Outer)).Message.ShouldContain(fault);

    private static string With(string fields) => Whole.TrimEnd().TrimEnd('}').TrimEnd() + fields + " }";

    [Fact]
    public void It_prints_what_it_is() =>
        Station.Parse(Whole, Outer).ToString().ShouldBe("invented plant: 2 machines, 9 pieces of equipment");
}

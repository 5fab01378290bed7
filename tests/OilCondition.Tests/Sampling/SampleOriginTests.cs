using UnitsNet;

namespace OilCondition.Tests.Sampling;

public class SampleOriginTests
{
    private static OilHistory Machine(string id, double viscosity, double? zinc, int swapped, (double, double) foreign)
    {
        var samples = Enumerable
            .Range(0, 10)
            .Select(i =>
            {
                var (v, z) = i == swapped ? foreign : (viscosity + 0.1 * (i % 3), zinc + 3 * (i % 4));
                var readings = new Dictionary<Measurand, Reading> { [Measurands.Viscosity40] = new(v) };
                if (z is { } measured)
                {
                    readings[Measurands.Zinc] = new(measured);
                }

                return new OilSample($"{id}-{i}", Invented.Start.AddDays(30 * i), readings);
            });
        var machine = new Machine(
            id,
            id,
            Invented.Oil,
            Volume.FromLiters(100),
            Temperature.FromDegreesCelsius(50),
            Temperature.FromDegreesCelsius(20)
        );
        return OilHistory.Create(machine, samples, [], []);
    }

    [Fact]
    public void Two_bottles_that_changed_places_are_named_with_each_other()
    {
        OilHistory[] fleet =
        [
            Machine("A", 46, 400, 6, (321, 15)),
            Machine("B", 320, 14, 6, (46.1, 402)),
            Machine("C", 32, 700, -1, default),
        ];

        var origins = SampleOrigin.Find(fleet);

        origins.Select(one => one.Sample.SampleNumber).ShouldBe(["A-6", "B-6"]);
        origins.Select(one => one.Resembles.Id).ShouldBe(["B", "A"]);
        origins.Select(one => one.Counterpart!.SampleNumber).ShouldBe(["B-6", "A-6"]);
    }

    [Fact]
    public void A_machine_sampled_twice_has_no_counterpart()
    {
        var origin = SampleOrigin
            .Find([Machine("A", 46, 400, 6, (321, 15)), Machine("B", 320, 14, -1, default)])
            .Single();

        origin.RecordedFor.Id.ShouldBe("A");
        origin.Resembles.Id.ShouldBe("B");
        origin.Counterpart.ShouldBeNull();
    }

    [Fact]
    public void Bottles_of_two_rounds_have_not_changed_places() =>
        SampleOrigin
            .Find([Machine("A", 46, 400, 6, (321, 15)), Machine("B", 320, 14, 7, (46.1, 402))])
            .ShouldAllBe(origin => origin.Counterpart == null);

    [Theory]
    [InlineData(350, 1)] // within a tenth above the highest, 320.2
    [InlineData(370, 0)]
    public void A_bottle_fits_a_machine_within_a_tenth_of_its_range(double viscosity, int expected) =>
        SampleOrigin
            .Find([Machine("A", 46, 400, 6, (viscosity, 15)), Machine("B", 320, 14, -1, default)])
            .Count.ShouldBe(expected);

    [Fact]
    public void An_oil_that_no_machine_has_stays_without_origin() =>
        SampleOrigin.Find([Machine("A", 46, 400, 6, (150, 90)), Machine("B", 320, 14, -1, default)]).ShouldBeEmpty();

    [Fact]
    public void A_viscosity_alone_names_no_machine() =>
        SampleOrigin.Find([Machine("A", 46, 400, 6, (321, 15)), Machine("B", 320, null, -1, default)]).ShouldBeEmpty();
}

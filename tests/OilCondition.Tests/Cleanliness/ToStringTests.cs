using OilCondition.Cleanliness;
using UnitsNet;

namespace OilCondition.Tests.Cleanliness;

/// <summary>What the results of the room print.</summary>
public class ToStringTests
{
    private static readonly Volume TenMillilitres = Volume.FromMilliliters(10);

    public static TheoryData<string, object> Results()
    {
        var (oil, flow) = (Volume.FromLiters(1000), VolumeFlow.FromLitersPerMinute(20));
        var loop = new KidneyLoop(oil, flow, new FilterBeta(200), 5e6);
        return new()
        {
            { "18/16/13", new CleanlinessCode(18, 16, 13) },
            { "≥7", ScaleNumber.OfFewCounted(7) },
            { "7 in 10 mL: 0.7 per mL, ≥7", new ParticleCount(7, TenMillilitres) },
            { "7 in 10 mL, diluted 100 times: 70 per mL, ≥13", new ParticleCount(7, TenMillilitres, 100) },
            { "7-9", new ParticleCount(20, TenMillilitres).ScaleNumbers(0.95) }, // 1.22 to 3.09 per mL, table 1 by eye
            { "AS4059, rounded limits", As4059.Rounded },
            { "7B/6C/5D", As4059Code.Parse("7b/6c/5d") },
            { ">12", CleanlinessClass.Above(12) },
            { "class 8, from size C", new DifferentialCounts(30000, 5800, 900, 150, 20) }, // table by eye
            { "6-7", ClassCorrespondence.Classes(As4059Size.B, 15, As4059.Exact) },
            { "2000 from 4 µm, 500 from 6 µm, per mL", new SizeDistribution([4, 6], [2000, 500]) },
            { "β 200", new FilterBeta(200) },
            // 5e6/(20 000 × 0.995) = 251.3 per mL; 1000/(20 × 0.995) ln(19 748.7/748.7) = 164.5 min.
            { "1000 L, 20 L/min through β 200, steady at 251 per mL", loop },
            { "expected 2.74 h", loop.TimeTo(20000, 1000) },
            // 2e7/19000, 5e6/19800, 4e5/19980 per mL.
            {
                "1000 L, 20 L/min, steady at 17/15/12",
                new KidneyLoopSizes(
                    new KidneyLoop(oil, flow, new FilterBeta(20), 2e7),
                    new KidneyLoop(oil, flow, new FilterBeta(100), 5e6),
                    new KidneyLoop(oil, flow, new FilterBeta(1000), 4e5)
                )
            },
            { "servo valve: 14/12/9 to 16/14/11", TargetCodeSet.StarterSet.Targets.Single(IsServoValve) },
            { "x: 1 component", new TargetCodeSet("x", [TargetCodeSet.StarterSet.Targets[0]]) },
        };
    }

    [Theory]
    [MemberData(nameof(Results), DisableDiscoveryEnumeration = true)]
    public void A_result_prints_itself(string text, object result) => result.ToString().ShouldBe(text);

    private static bool IsServoValve(ComponentTarget target) => target.Component == "servo valve";
}

using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>How far what goes into a plan may be out, as standard errors: titration or sensor, curve, unit, tank.</summary>
/// <remarks>All defaults are ours: what a plant gets from one titration, two measured saturations, a nameplate and a dial gauge. State your own.</remarks>
/// <example><code>var errors = new InputErrors(water: Ratio.FromPercent(5), saturation: Ratio.FromPercent(8));</code></example>
public sealed record InputErrors
{
    /// <summary>States the errors, each relative unless said otherwise. Name the arguments.</summary>
    /// <param name="water">Of the water at the start, by titration or sensor, 0 to 1; null for 0.08.</param>
    /// <param name="saturation">Of the saturation curve, 0 to 1; null for 0.15.</param>
    /// <param name="removalPerPass">Of the transfer units behind the removal per pass, or of the approach of a purge, 0 to 1; null for 0.2.</param>
    /// <param name="flow">Of the flow of oil or air, 0 to 1; null for 0.05.</param>
    /// <param name="chamberPressure">Of the absolute pressure, weather and gauge together, 0 to 20 kPa; null for 1.3 kPa, or a fifth of the pressure where that is less.</param>
    /// <param name="heatLoss">Of the loss of the tank, 0 to 1; null for 0.25.</param>
    /// <param name="waterIngress">Of the water that comes in, 0 to 1; null for 0.3.</param>
    /// <param name="dropletDiameter">Of the size of drops, 0 to 1; null for 0.3.</param>
    /// <param name="particleCounts">Of the counts at the start, all sizes alike, 0 to 1; null for 0.3, about half a scale number.</param>
    /// <exception cref="ArgumentOutOfRangeException">An error lies outside its range.</exception>
    public InputErrors(
        Ratio? water = null,
        Ratio? saturation = null,
        Ratio? removalPerPass = null,
        Ratio? flow = null,
        Pressure? chamberPressure = null,
        Ratio? heatLoss = null,
        Ratio? waterIngress = null,
        Ratio? dropletDiameter = null,
        Ratio? particleCounts = null
    )
    {
        Water = Share(water, 0.08, nameof(water));
        Saturation = Share(saturation, 0.15, nameof(saturation));
        RemovalPerPass = Share(removalPerPass, 0.2, nameof(removalPerPass));
        Flow = Share(flow, 0.05, nameof(flow));
        HeatLoss = Share(heatLoss, 0.25, nameof(heatLoss));
        WaterIngress = Share(waterIngress, 0.3, nameof(waterIngress));
        DropletDiameter = Share(dropletDiameter, 0.3, nameof(dropletDiameter));
        ParticleCounts = Share(particleCounts, 0.3, nameof(particleCounts));
        Guard.InRange(chamberPressure?.Kilopascals ?? 0, 0, 20, "kPa", nameof(chamberPressure));
        ChamberPressure = chamberPressure;
    }

    /// <summary>Those of common figures; all ours.</summary>
    public static InputErrors Usual { get; } = new();

    /// <summary>Of the water at the start, relative.</summary>
    public Ratio Water { get; }

    /// <summary>Of the saturation curve, relative.</summary>
    public Ratio Saturation { get; }

    /// <summary>Of the transfer units behind the removal per pass, relative.</summary>
    public Ratio RemovalPerPass { get; }

    /// <summary>Of the flow, relative.</summary>
    public Ratio Flow { get; }

    /// <summary>Of the absolute pressure; null for 1.3 kPa, or a fifth of the pressure where that is less.</summary>
    public Pressure? ChamberPressure { get; }

    /// <summary>Of the loss of the tank, relative.</summary>
    public Ratio HeatLoss { get; }

    /// <summary>Of the water that comes in, relative.</summary>
    public Ratio WaterIngress { get; }

    /// <summary>Of the size of drops, relative.</summary>
    public Ratio DropletDiameter { get; }

    /// <summary>Of the particle counts at the start, relative.</summary>
    public Ratio ParticleCounts { get; }

    /// <summary>The errors in one line.</summary>
    /// <returns>For example <c>water 8 %, saturation 15 %, removal 20 %, flow 5 %, loss 25 %, ingress 30 %, drops 30 %, counts 30 %</c>.</returns>
    public override string ToString() =>
        $"water {PlainText.Number(Water.Percent)} %, saturation {PlainText.Number(Saturation.Percent)} %, "
        + $"removal {PlainText.Number(RemovalPerPass.Percent)} %, flow {PlainText.Number(Flow.Percent)} %, "
        + $"loss {PlainText.Number(HeatLoss.Percent)} %, ingress {PlainText.Number(WaterIngress.Percent)} %, "
        + $"drops {PlainText.Number(DropletDiameter.Percent)} %, counts {PlainText.Number(ParticleCounts.Percent)} %";

    internal InputErrors WithRemovalPerPass(Ratio removalPerPass) => With(removalPerPass: removalPerPass);

    /// <summary>With a second reading of the water, or of the particles: the mean of two errs by √2 less.</summary>
    internal InputErrors AfterOneMore(bool ofWater) =>
        ofWater ? With(water: Water / Math.Sqrt(2)) : With(particleCounts: ParticleCounts / Math.Sqrt(2));

    private InputErrors With(Ratio? water = null, Ratio? removalPerPass = null, Ratio? particleCounts = null) =>
        new(
            water ?? Water,
            Saturation,
            removalPerPass ?? RemovalPerPass,
            Flow,
            ChamberPressure,
            HeatLoss,
            WaterIngress,
            DropletDiameter,
            particleCounts ?? ParticleCounts
        );

    private static Ratio Share(Ratio? stated, double usual, string name)
    {
        var share = stated ?? Ratio.FromDecimalFractions(usual);
        Guard.InRange(share.DecimalFractions, 0, 1, "(ratio)", name);
        return share;
    }
}

using OilCondition.Water;

namespace OilCondition.Tests.Water;

/// <summary>
/// The equations behind latent heat and vapour volume against the check values of their release, IAPWS R7-97(2012), tables 5 and 15.
/// The release itself was not seen: the values are those that several independent public implementations quote alike.
/// </summary>
public class If97TableTests
{
    private static (double Volume, double Enthalpy) At(string region, double kelvins, double megapascal) =>
        region == "liquid" ? If97Liquid.At(kelvins, megapascal * 1e6) : If97Vapour.At(kelvins, megapascal * 1e6);

    [Theory]
    [InlineData("liquid", 300, 3, 0.00100215168, 115.331273)]
    [InlineData("liquid", 300, 80, 0.000971180894, 184.142828)]
    [InlineData("liquid", 500, 3, 0.001202418, 975.542239)]
    [InlineData("vapour", 300, 0.0035, 39.4913866, 2549.91145)]
    [InlineData("vapour", 700, 0.0035, 92.3015898, 3335.68375)]
    [InlineData("vapour", 700, 30, 0.00542946619, 2631.49474)]
    [Trait("Category", "Reference")]
    public void Regions_1_and_2_give_the_check_values_of_the_release(
        string region,
        double kelvins,
        double megapascal,
        double volume,
        double enthalpy
    )
    {
        // Nine digits are printed.
        var (v, h) = At(region, kelvins, megapascal);
        v.ShouldBe(volume, 1e-8 * volume);
        (h / 1000).ShouldBe(enthalpy, 1e-8 * enthalpy);
    }
}

namespace OilCondition.Tests.Sampling;

/// <summary>What 'did you mean' may suggest: similar words, and nothing rather than a wrong one.</summary>
public class NearestTests
{
    [Theory]
    [InlineData("watr-content", "water-content")]
    [InlineData("WaterContent", "water-content")]
    [InlineData("water", "water-content")]
    [InlineData("aluminum", "aluminium")]
    [InlineData("phosporus", "phosphorus")]
    [InlineData("sliver", "silver")]
    [InlineData("viscosity 40 C", "viscosity-40c")]
    [InlineData("acidnumbr", "acid-number")]
    [InlineData("particles-6", "particles-6um")]
    [InlineData("membrane patch color", "membrane-patch-colour")]
    public void A_mistyped_id_is_recognised(string written, string expected) =>
        MeasurandCatalog.BuiltIn.Nearest(written).ShouldBe(expected);

    [Theory]
    [InlineData("gallium")] // four letters of calcium
    [InlineData("indium")]
    [InlineData("gold")]
    [InlineData("colour")]
    [InlineData("remark")]
    [InlineData("soot")]
    [InlineData("zn")]
    [InlineData("")]
    [InlineData("--")]
    [InlineData("at")]
    public void Nothing_is_suggested_for_what_is_not_similar(string written) =>
        MeasurandCatalog.BuiltIn.Nearest(written).ShouldBeNull();

    [Fact]
    public void A_limit_set_suggests_nothing_for_what_is_not_similar()
    {
        var error = Should.Throw<FormatException>(() =>
            OilCondition.LimitSet.Parse("""{ "name": "x", "limits": [ { "measurand": "glycol" } ] }""")
        );

        error.Message.ShouldContain("'glycol' is not a known measurand.");
        error.Message.ShouldNotContain("did you mean");
    }

    [Fact]
    public void A_text_of_any_length_is_cut_in_the_message() =>
        MeasurandCatalog.BuiltIn.Unknown(new string('x', 10_000_000)).Length.ShouldBeLessThan(300);
}

using OilCondition.Text;

namespace OilCondition.Tests.Text;

/// <summary>Numbers as people write them. The expected texts are written by hand.</summary>
public class NumberWordsTests
{
    [Theory]
    [InlineData(0, "0")]
    [InlineData(69.44, "69.4")]
    [InlineData(-3.456, "-3.46")]
    [InlineData(0.1 + 0.2, "0.3")]
    [InlineData(0.000123456, "0.000123")]
    [InlineData(999.4, "999")]
    [InlineData(999.7, "1000")]
    [InlineData(12345.6, "12346")]
    [InlineData(300_000, "300000")]
    [InlineData(2.5e-7, "2.5E-7")]
    [InlineData(2.5e15, "2.5E15")]
    public void A_figure_without_an_uncertainty_has_three_digits(double value, string text) =>
        PlainText.Number(value).ShouldBe(text);

    [Theory]
    [InlineData(69.4, 7, "69")]
    [InlineData(69.4, 0.5, "69.4")]
    [InlineData(69.44444, 0.001, "69.4")]
    [InlineData(69.4, 20, "70")]
    [InlineData(69.4, 500, "70")]
    [InlineData(12_345, 1_000, "12000")]
    [InlineData(0.0523, 0.01, "0.05")]
    public void A_figure_has_the_digits_that_its_uncertainty_bears(double value, double uncertainty, string text) =>
        PlainText.Number(value, uncertainty).ShouldBe(text);
}

using System.Globalization;
using UnitsNet;

namespace AirColumn.Tests.Bores;

public class BoreTextTests
{
    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void Shapes_print_alike_in_every_culture(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        try
        {
            var bore = Bore.Build()
                .Cylinder(Length.FromMillimeters(40.9), Length.FromMillimeters(1300.5))
                .Cone(Length.FromMillimeters(38), Length.FromMillimeters(70), Length.FromMillimeters(90))
                .OpenEnd(Length.FromMillimeters(3.7));
            Assert.Equal(
                "40.9 mm to 40.9 mm, 1300.5 mm long; 38 mm to 70 mm, 90 mm long; open end, wall 3.7 mm",
                bore.ToString()
            );
            Assert.Equal("40.9 mm to 38 mm at 1300.5 mm", bore.Steps[0].ToString());
            Assert.Equal(
                "open blown end, correction 12.5 mm",
                BlownEnd.Open(Length.FromMillimeters(12.5)).ToString()
            );
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}

using AirColumn.Workshop.Stock;

namespace AirColumn.Workshop.Tests.Stock;

public class CatalogueTests
{
    private const string Header =
        "series,size,material,outside,outside_tolerance,wall_min,wall_max,inside,unit,standard,edition,source,certainty\n";

    // No row without saying where it is from.
    [Fact]
    public void Every_row_has_a_standard_an_edition_and_a_source()
    {
        Assert.NotEmpty(Catalogue.Standard.Pipes);
        Assert.NotEmpty(Catalogue.Standard.Sockets);
        Assert.All(
            Catalogue
                .Standard.Pipes.Select(pipe => (pipe.Standard, pipe.Edition, pipe.Source))
                .Concat(
                    Catalogue.Standard.Sockets.Select(socket =>
                        (socket.Standard, socket.Edition, socket.Source)
                    )
                ),
            row =>
            {
                Assert.NotEmpty(row.Standard);
                Assert.NotEmpty(row.Edition);
                Assert.NotEmpty(row.Source);
            }
        );
    }

    [Theory]
    [InlineData("standard")]
    [InlineData("edition")]
    [InlineData("source")]
    [InlineData("series")]
    public void A_row_without_it_is_refused(string column)
    {
        var columns = Header.Trim().Split(',');
        var cells = "own,1,PVC,40,,2,2.4,,mm,mine,2026,caliper,own".Split(',');
        cells[Array.IndexOf(columns, column)] = "";
        var problem = Assert.Throws<FormatException>(() =>
            Catalogue.Standard.WithPipes(Header + string.Join(',', cells) + "\n")
        );
        Assert.Equal(
            $"Line 2 of the catalogue, column {column}: it is empty; every row must say it.",
            problem.Message
        );
    }

    // Inside diameters as makers' tables of schedule 40 pipe print them, average of two lists in public (common practice): within the
    // limits of the standard, near their middle.
    [Theory]
    [InlineData("pvc-40 1", 26.24)]
    [InlineData("pvc-40 1-1/4", 34.65)]
    [InlineData("pvc-40 1-1/2", 40.44)]
    [InlineData("pvc-40 2", 52.04)]
    [InlineData("pvc-40 2-1/2", 62.10)]
    [InlineData("pvc-40 3", 77.27)]
    public void Inside_diameters_are_those_that_tables_print(string name, double millimetres)
    {
        var pipe = Catalogue.Standard.Pipe(name);
        Assert.InRange(millimetres, pipe.InsideLeast!.Value.Millimeters, pipe.InsideMost!.Value.Millimeters);
        Assert.Equal(millimetres, pipe.Inside.Millimeters, 0.2);
    }

    // A pipe goes into the socket of its size (ASTM D1785 into D2466): loose at the entrance, tight at the bottom.
    [Fact]
    public void Pipes_go_into_the_sockets_of_their_size()
    {
        foreach (var socket in Catalogue.Standard.Sockets)
        {
            var pipe = Catalogue.Standard.Pipe(socket.Name);
            Assert.True(pipe.Outside < socket.Entrance);
            Assert.True(
                pipe.Outside.Millimeters + pipe.OutsideTolerance!.Value.Millimeters
                    > socket.Bottom.Millimeters
            );
        }
    }

    [Fact]
    public void Own_rows_take_the_place_of_those_of_the_same_name()
    {
        var own = Catalogue.Standard.WithPipes(
            "size,series,outside,outside_tolerance,wall_min,wall_max,inside,unit,standard,edition,source,certainty,material\n"
                + "1-1/2,pvc-40,1.9,,,,1.6,in,\"mine, measured\",2026,caliper,own,PVC\n"
        );
        var pipe = own.Pipe("pvc-40 1-1/2");
        Assert.Equal(40.64, pipe.Inside.Millimeters, 1e-9);
        Assert.Equal("mine, measured", pipe.Standard);
        Assert.Equal(DataCertainty.Own, pipe.Certainty);
        Assert.Null(pipe.InsidePlusMinus);
        Assert.Equal(Catalogue.Standard.Pipes.Count, own.Pipes.Count);
    }

    [Theory]
    [InlineData("own,1,PVC,40,,,,,mm,s,e,q,own", "column wall_min: it is empty and so is inside")]
    [InlineData("own,1,PVC,40,,21,22,,mm,s,e,q,own", "the wall must be thinner than the radius")]
    [InlineData("own,1,PVC,40,,3,2,,mm,s,e,q,own", "column wall_max: it is below wall_min")]
    [InlineData("own,1,PVC,forty,,3,4,,mm,s,e,q,own", "column outside: 'forty' is not a size")]
    [InlineData("own,1,PVC,-40,,3,4,,mm,s,e,q,own", "column outside: '-40' is not a size")]
    [InlineData("own,1,PVC,NaN,,3,4,,mm,s,e,q,own", "column outside: 'NaN' is not a size")]
    [InlineData("own,1,PVC,40,30,3,6,,mm,s,e,q,own", "nothing is left of the bore")]
    [InlineData("own,1,PVC,40,,3,4,,cm,s,e,q,own", "column unit: 'cm' is not known; write mm or in")]
    [InlineData("own,1,PVC,40,,3,4,,mm,s,e,q,sure", "column certainty: 'sure' is not known")]
    public void What_cannot_be_is_told_with_its_place(string row, string says)
    {
        var problem = Assert.Throws<FormatException>(() => Catalogue.Standard.WithPipes(Header + row + "\n"));
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
        Assert.StartsWith("Line 2 of the catalogue", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Columns_and_names_are_told()
    {
        var missing = Assert.Throws<FormatException>(() =>
            Catalogue.Standard.WithPipes("series,size\na,b\n")
        );
        Assert.Contains("no column 'material'", missing.Message, StringComparison.Ordinal);
        var more = Assert.Throws<FormatException>(() =>
            Catalogue.Standard.WithPipes(Header.Trim() + ",colour\n")
        );
        Assert.Contains("a column 'colour'", more.Message, StringComparison.Ordinal);
        Assert.Throws<FormatException>(() => Catalogue.Standard.WithPipes(Header + "a,b\n"));
        Assert.Throws<FormatException>(() => Catalogue.Standard.WithPipes(""));
        Assert.Throws<FormatException>(() => Catalogue.Standard.WithPipes("series," + Header));
        const string Row = "own,1,PVC,40,,3,4,,mm,s,e,q,own\n";
        var twice = Assert.Throws<FormatException>(() => Catalogue.Standard.WithPipes(Header + Row + Row));
        Assert.Contains("an earlier row has this series and size", twice.Message, StringComparison.Ordinal);
        var size = Assert.Throws<ArgumentException>(() => Catalogue.Standard.Pipe("pvc-40 7"));
        Assert.Contains("the sizes of pvc-40 are 1/2, 3/4, 1,", size.Message, StringComparison.Ordinal);
        var series = Assert.Throws<ArgumentException>(() => Catalogue.Standard.Socket("lead 1"));
        Assert.Contains("The series are pvc-40.", series.Message, StringComparison.Ordinal);
    }
}

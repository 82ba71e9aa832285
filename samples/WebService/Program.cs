using AirColumn;
using AirColumn.Documents;
using Microsoft.AspNetCore.Http.Timeouts;
using WebService;

// Column documents come in as bodies of requests, answers go out as they are: both know their JSON.
var builder = WebApplication.CreateBuilder(args);
builder.Services.AddProblemDetails();
builder.Services.AddExceptionHandler<BadQuestions>();

// A small document can be a long computation: it ends with the request, or with its time.
builder.Services.AddRequestTimeouts(options =>
    options.DefaultPolicy = new RequestTimeoutPolicy
    {
        Timeout = TimeSpan.FromSeconds(builder.Configuration.GetValue("SecondsForAnAnswer", 60.0)),
    }
);
var service = builder.Build();
service.UseExceptionHandler();
service.UseRequestTimeouts();

service.MapPost(
    "/resonances",
    (ColumnDocument document, CancellationToken token, int count = 8, string? fingering = null) =>
    {
        Limit.Require(count, 1, 1000, nameof(count));
        var column = Column(document, fingering);
        return new Answer<ResonanceList>(
            Provenance.Of(column, document, token),
            column.FirstResonances(count, token)
        );
    }
);

service.MapPost(
    "/impedance",
    (
        ColumnDocument document,
        double fromHz,
        double toHz,
        int points,
        CancellationToken token,
        string? fingering = null
    ) =>
    {
        Limit.Require(points, 2, 100_000, nameof(points));
        var column = Column(document, fingering);
        var curve = column.Impedance(FrequencyGrid.Linear(fromHz, toHz, points), token);
        return new Answer<ImpedanceCurve>(Provenance.Of(column, document, token), curve);
    }
);

// The document as the library would write it: version 2, nothing left out.
service.MapPost("/document", (ColumnDocument document) => document);

service.Run();

static Column Column(ColumnDocument document, string? fingering) =>
    fingering is null ? document.ToColumn() : document.ToColumn(fingering);

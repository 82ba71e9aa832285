using AirColumn.Documents;
using Microsoft.AspNetCore.Diagnostics;

namespace WebService;

/// <summary>Tells the asker what is wrong with a document or an argument, and where: status 400, as problem details.</summary>
internal sealed class BadQuestions(IProblemDetailsService problems) : IExceptionHandler
{
    public async ValueTask<bool> TryHandleAsync(
        HttpContext httpContext,
        Exception exception,
        CancellationToken cancellationToken
    )
    {
        var document = Document(exception);
        if (document is null && exception is not (ArgumentException or BadHttpRequestException))
        {
            return false;
        }

        httpContext.Response.StatusCode = (exception as BadHttpRequestException)?.StatusCode ?? 400;
        var context = new ProblemDetailsContext
        {
            HttpContext = httpContext,
            ProblemDetails = { Detail = document?.Message ?? exception.Message },
        };
        if (document is not null)
        {
            context.ProblemDetails.Extensions["place"] = document.Path;
        }

        return await problems.TryWriteAsync(context).ConfigureAwait(false);
    }

    // Inside of what the serializer, and around it the framework, have made of it.
    private static ColumnDocumentException? Document(Exception? exception) =>
        exception is null or ColumnDocumentException
            ? exception as ColumnDocumentException
            : Document(exception.InnerException);
}

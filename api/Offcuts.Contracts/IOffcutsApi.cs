using Refit;

namespace Offcuts.Contracts;

/// <summary>The Web API as a client sees it. Answers other than success throw <see cref="ApiException"/> with a <see cref="Problem"/> body.</summary>
public interface IOffcutsApi
{
    /// <summary>Whether the service answers.</summary>
    [Get("/health")]
    Task<Health> GetHealthAsync(CancellationToken cancellationToken = default);

    /// <summary>One page of boards.</summary>
    [Get("/v1/boards")]
    Task<BoardPage> ListBoardsAsync(BoardQuery query, CancellationToken cancellationToken = default);

    /// <summary>Logs a board.</summary>
    [Post("/v1/boards")]
    Task<BoardRecord> CreateBoardAsync([Body] BoardEntry board, CancellationToken cancellationToken = default);

    /// <summary>One board.</summary>
    [Get("/v1/boards/{id}")]
    Task<BoardRecord> GetBoardAsync(string id, CancellationToken cancellationToken = default);

    /// <summary>Replaces what is known of a board.</summary>
    [Put("/v1/boards/{id}")]
    Task<BoardRecord> ReplaceBoardAsync(string id, [Body] BoardEntry board, CancellationToken cancellationToken = default);

    /// <summary>Forgets a board.</summary>
    [Delete("/v1/boards/{id}")]
    Task DeleteBoardAsync(string id, CancellationToken cancellationToken = default);

    /// <summary>Logs many boards, all or none.</summary>
    [Post("/v1/board-imports")]
    Task<BoardImportResult> ImportBoardsAsync([Body] BoardImport boards, CancellationToken cancellationToken = default);
}

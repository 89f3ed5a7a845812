/** What a procedure says: the document, its checks, and the sanity of its figures. */
package witnessmark.procedure;
